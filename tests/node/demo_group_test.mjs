// An invented group of 2,000 people, written as codes and read back: the weakness planted in it is the first thing
// to teach there, and coaching shows in the same people's second checks.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const tool = path.join(root, '.build/tools/tests/rehale_demo_group');
const rows = execFileSync(tool, ['--find', path.join(root, 'assets'), '2000'], { encoding: 'utf8', maxBuffer: 1 << 26 })
  .trim().split('\r\n').map((line) => line.split(','));
const of = (kind, family, language) => rows.filter((row) => row[0] === kind && row[1] === family && row[2] === language);

test('all results of more than 2,000 checks are read', () => {
  const [read] = rows.filter(([kind]) => kind === 'read');
  assert.ok(Number(read[1]) > 2600, `${read[1]} checks`);
});

test('the planted weakness is found where it is and nowhere else', () => {
  const planted = of('teach', 'powder-lever', 'pt');
  assert.equal(planted[0][3], 'not-into-device');
  const elsewhere = of('teach', 'powder-lever', 'en').find((row) => row[3] === 'not-into-device');
  assert.ok(Number(planted[0][6]) > Number(elsewhere[7]), 'the 95 % intervals do not meet');
  // .75 of them lack it (tests/support/demo_group.h)
  assert.ok(Number(planted[0][6]) < 0.75 && Number(planted[0][7]) > 0.65);
  for (const family of ['spray', 'powder-cover', 'soft-mist']) {
    const [en, pt] = ['en', 'pt'].map((language) => new Map(of('teach', family, language).map((row) => [row[3], row])));
    assert.ok(en.size > 5 && pt.size > 5, `${family}: ${en.size} and ${pt.size} techniques`);
    let apart = 0;
    for (const [technique, row] of en) {
      const other = pt.get(technique);
      if (Number(row[6]) > Number(other[7]) || Number(other[6]) > Number(row[7])) apart += Number(row[5] !== '0' && other[5] !== '0');
    }
    assert.ok(apart <= 1, `${family}: ${apart} techniques differ between languages though none was planted`);
  }
});

test('coaching shows in the second check of the same people', () => {
  const row = of('pairs', 'powder-lever', '').find(([, , , technique]) => technique === 'not-into-device');
  assert.ok(Number(row[5]) > Number(row[6]) && Number(row[7]) < 0.001);
});
