// Our codes read by others: base64url by node, CBOR by a general decoder in its strict mode.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { decode, encode } from 'cborg';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const rows = readFileSync(path.join(root, 'tests/fixtures/codes/version1.txt'), 'utf8').trim().split('\n')
  .map((line) => line.split('\t'));
const payload_of = (code) => Buffer.from(code.slice(2), 'base64url').subarray(0, -4);

test('every code is base64url of strict CBOR, encoded as a general encoder does', () => {
  assert.equal(rows.length, 9);
  for (const [code] of rows) {
    const bytes = Buffer.from(code.slice(2), 'base64url');
    assert.equal(bytes.toString('base64url'), code.slice(2));
    const list = decode(payload_of(code), { strict: true, rejectDuplicateMapKeys: true });
    assert.ok(Array.isArray(list));
    // floats aside, which cborg would write shorter
    if (!list.flat().some((value) => typeof value === 'number' && !Number.isInteger(value))) {
      assert.deepEqual(Buffer.from(encode(list)), payload_of(code));
    }
  }
});

test('the fields of a result stand where the format says', () => {
  const [code, log] = rows[1];
  const list = decode(payload_of(code));
  const [begin, ...events] = JSON.parse(log).events;
  assert.equal(list.length, 11);
  assert.equal(list[0], begin.family);
  assert.equal(Buffer.from(list[1]).toString('hex'), begin.content);
  assert.equal(list[3], begin.language);
  assert.equal(list[5].length, 16);
  assert.equal(list[6], 20782);
  assert.equal(BigInt(list[8]), BigInt(begin.seed));
  const shown = events.filter(({ what }) => what.endsWith('shown')).length;
  const answered = events.length - shown;
  // question, time, then null or time and answer
  assert.equal(list[10].length, 2 * shown + 2 * answered + (shown - answered));
});
