// Every sentence a person reads: Flesch–Kincaid grade <= 6, at most 15 words a sentence, none of the words
// of look.md that scold. Counts by the npm libraries syllable, formula by flesch-kincaid (facts/diagnosis.md 7).
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { fleschKincaid } from 'flesch-kincaid';
import { syllable } from 'syllable';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const k_scolding = /\b(fail(s|ed|ure)?|wrong(ly)?|bad(ly)?|incorrect(ly)?|scores?|tests?|patients?|non-compliant|just|simply)\b/i;
const k_most_words = 15;
const k_most_grade = 6;
// A name of two or three words has no sentence to be graded: only whole sentences are.
const k_least_words = 5;

const files = [
  ...readdirSync(path.join(root, 'assets/text')).filter((name) => name === 'en.json').map((name) => `assets/text/${name}`),
  ...readdirSync(path.join(root, 'assets/families')).map((name) => `assets/families/${name}/text.en.json`),
];

function* sentences_of(value, at = []) {
  for (const [key, inner] of Object.entries(value)) {
    if (typeof inner === 'object') yield* sentences_of(inner, [...at, key]);
    else if (typeof inner === 'string') yield [[...at, key].join('/'), inner];
  }
}

const words_in = (text) => text.match(/[\p{L}\p{N}'’-]+/gu) ?? [];
const split = (text) => text.split(/(?<=[.!?:])\s+/).filter((part) => words_in(part).length > 0);

export function grade(text) {
  const words = words_in(text);
  return fleschKincaid({
    sentence: Math.max(1, split(text).length), word: words.length,
    syllable: words.reduce((sum, word) => sum + Math.max(1, syllable(word)), 0),
  });
}

test('the grade agrees with the published check value', () => {
  // facts/diagnosis.md 7, text T1: W 34, S 4, Y 46 by flesch-kincaid and syllable: 3.689705882
  const text = 'Hold the inhaler upright. Shake it well before you use it. Breathe out gently, away from the mouthpiece. '
    + 'Close your lips around the mouthpiece and breathe in slowly while you press the canister once.';
  assert.ok(Math.abs(grade(text) - 3.689705882) < 1e-6, String(grade(text)));
});

for (const file of files) {
  test(`${file} is plain and kind`, () => {
    const found = [];
    for (const [at, text] of sentences_of(JSON.parse(readFileSync(path.join(root, file), 'utf8')))) {
      // Not sentences: what a kind of device is called.
      if (['schema', 'family', 'language', 'name'].includes(at) || /^families\/[a-z-]+\/name$/.test(at)) continue;
      const words = text.replace(/\{[a-z]+\}/g, 'it');
      if (k_scolding.test(words)) found.push(`${at}: scolds (${words.match(k_scolding)[0]}): ${text}`);
      for (const part of split(words)) {
        if (words_in(part).length > k_most_words) found.push(`${at}: ${words_in(part).length} words: ${part}`);
      }
      if (words_in(words).length >= k_least_words && grade(words) > k_most_grade) {
        found.push(`${at}: grade ${grade(words).toFixed(1)}: ${text}`);
      }
    }
    assert.deepEqual(found, []);
  });
}
