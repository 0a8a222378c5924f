// The table of WCAG 2.2 in DEVELOPERS.md: every criterion of level A and AA stands in it once, and each test that it
// names is there. The numbers are those of the standard (W3C Recommendation, 2023; 4.1.1 is gone from it): 31 of level A
// and 24 of level AA.
import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const text = readFileSync(path.join(root, 'DEVELOPERS.md'), 'utf8');
const k_a = '1.1.1 1.2.1 1.2.2 1.2.3 1.3.1 1.3.2 1.3.3 1.4.1 1.4.2 2.1.1 2.1.2 2.1.4 2.2.1 2.2.2 2.3.1 2.4.1 2.4.2 2.4.3 2.4.4 '
  + '2.5.1 2.5.2 2.5.3 2.5.4 3.1.1 3.2.1 3.2.2 3.2.6 3.3.1 3.3.2 3.3.7 4.1.2';
const k_aa = '1.2.4 1.2.5 1.3.4 1.3.5 1.4.3 1.4.4 1.4.5 1.4.10 1.4.11 1.4.12 1.4.13 2.4.5 2.4.6 2.4.7 2.4.11 2.5.7 2.5.8 3.1.2 '
  + '3.2.3 3.2.4 3.3.3 3.3.4 3.3.8 4.1.3';
const k_criteria = `${k_a} ${k_aa}`.split(' ');
const part = text.slice(text.indexOf('## WCAG 2.2'));
const rows = part.split('\n').filter((line) => /^\| \d/.test(line)).map((line) => line.split('|').map((cell) => cell.trim()).slice(1, -1));

test('all 55 criteria stand in the table, once each', () => {
  const listed = rows.flatMap(([numbers]) => numbers.split(', '));
  assert.equal(k_criteria.length, 55);
  assert.deepEqual([...listed].sort(), [...k_criteria].sort());
});

test('each row says how it is tested or why it does not apply, and the tests it names exist', () => {
  for (const [numbers, , how] of rows) {
    assert.match(how ?? '', /_test\b|does not apply|\baxe\b|met in part|tests\//, numbers);
    for (const [name] of how.matchAll(/[a-z0-9_]+_test\b/g)) {
      const places = [`tests/browser/${name}.mjs`, `tests/node/${name}.mjs`, `tests/web/${name}.cpp`];
      assert.ok(places.some((place) => existsSync(path.join(root, place))), `${numbers}: there is no ${name}`);
    }
  }
});
