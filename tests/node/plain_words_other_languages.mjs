// Every Spanish and Portuguese sentence a person reads: easy by the formula of that language
// (ci/lib/reading_ease.mjs names the sources), at most 15 words a sentence, no word that scolds, no jargon.
// plain_words.mjs does the same for English.
import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { counts, ease, fernandez_huerta, split, syllables, words_in } from '../../ci/lib/reading_ease.mjs';
import { files_of, languages_of, sentences_of } from '../../ci/lib/translations.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const k_most_words = 15;
const k_least_words = 5; // as in English: a name of a few words is no sentence to be graded

// least: every text for itself, the lower end of "fairly easy" (es) and "easy" (pt);
// whole: each file on the whole, "very easy".
const k_rules = {
  es: {
    least: 65, whole: 80,
    scolds: /(?<!\p{L})(fall(a|as|o|ó|ar|aste|os)|error(es)?|mal|mal[oa]s?|incorrect\p{L}*|equivoc\p{L}*|puntuaci\p{L}*|puntajes?|ex[aá]men(es)?|pacientes?|simplemente|meramente|culpa\p{L}*|torpe\p{L}*)(?!\p{L})/iu,
    jargon: /(?<!\p{L})(inhalaci\p{L}*|exhal\p{L}*|inspira\p{L}*|espira\p{L}*|propelente\p{L}*|presurizad\p{L}*|administr\p{L}*|orofar\p{L}*|faringe\p{L}*|disnea|efectuar|realizar|debido a|mediante|dispositivos?(?! médico))(?!\p{L})/iu,
  },
  pt: {
    least: 50, whole: 75,
    scolds: /(?<!\p{L})(falh\p{L}*|err(o|os|ou|ar|ado|ada|aste)|mal|mau|maus|má|más|incorret\p{L}*|pontuaç\p{L}*|prova|provas|exames?|pacientes?|simplesmente|culpa\p{L}*)(?!\p{L})/iu,
    jargon: /(?<!\p{L})(inalaç\p{L}*|exal\p{L}*|inspira\p{L}*|expira\p{L}*|propelente\p{L}*|pressurizad\p{L}*|administr\p{L}*|orofar\p{L}*|faringe\p{L}*|dispneia|efetuar|realizar|devido a|mediante|dispositivos?(?! médico))(?!\p{L})/iu,
  },
};

test('the Spanish formulas agree with the published check value', () => {
  // facts/diagnosis.md 7: W 32, S 4, Y 69 by silabea 1.0.0; Fernandez-Huerta 69.305, INFLESZ 64.500625
  const text = 'Agite el inhalador antes de usarlo. Respire hacia fuera con calma. Cierre los labios alrededor de la boquilla '
    + 'y respire despacio mientras presiona el cartucho una vez. Aguante la respiración diez segundos.';
  assert.deepEqual(counts(text, 'es'), { words: 32, sentences: 4, syllables: 69 });
  assert.ok(Math.abs(ease(text, 'es') - 64.500625) < 1e-9);
  assert.ok(Math.abs(fernandez_huerta(text) - 69.305) < 1e-9);
});

test('the Portuguese formula is the English one plus 42', () => {
  // Martins et al. 1996 (from memory): 206.835 + 42. By hand: Pres-si-o-ne a la-ta u-ma vez:
  // 5 words, 4 + 1 + 2 + 2 + 1 = 10 syllables.
  assert.deepEqual(counts('Pressione a lata uma vez.', 'pt'), { words: 5, sentences: 1, syllables: 10 });
  assert.ok(Math.abs(ease('Pressione a lata uma vez.', 'pt') - (206.835 + 42 - 1.015 * 5 - 84.6 * 2)) < 1e-9);
});

for (const language of ['es', 'pt']) {
  const file = path.join(root, `tests/fixtures/syllables.${language}.json`);
  test(`syllables of ${language} are those of ${path.basename(file)}`, () => {
    const { words } = JSON.parse(readFileSync(file, 'utf8'));
    const other = Object.entries(words).filter(([word, want]) => syllables(word, language) !== want);
    assert.ok(Object.keys(words).length >= 40);
    assert.deepEqual(other, []);
  });
}

// Not sentences: what a kind of device is called.
const is_name = (key) => key === 'name' || /^families\/[a-z-]+\/name$/.test(key);
const plain = (text) => text.replace(/\{[a-z]+\}/g, 'uno');

function faults(key, text, language) {
  const { least, scolds, jargon } = k_rules[language];
  const found = [];
  if (scolds.test(text)) found.push(`${key}: scolds (${text.match(scolds)[0]}): ${text}`);
  if (jargon.test(text)) found.push(`${key}: not plain (${text.match(jargon)[0]}): ${text}`);
  for (const part of split(text)) {
    if (words_in(part).length > k_most_words) found.push(`${key}: ${words_in(part).length} words: ${part}`);
  }
  if (words_in(text).length >= k_least_words && ease(text, language) < least) {
    found.push(`${key}: ease ${ease(text, language).toFixed(1)}, wanted ${least}: ${text}`);
  }
  return found;
}

const languages = new Set(languages_of(root).filter((language) => language !== 'en'));
for (const language of languages) {
  for (const file of files_of(root, language)) {
    test(`assets/${file} is plain and kind`, () => {
      assert.ok(k_rules[language], `${language} has no rules here yet: add its formula and words`);
      assert.ok(existsSync(path.join(root, 'assets', file)), `assets/${file} is missing`);
      const texts = [...sentences_of(JSON.parse(readFileSync(path.join(root, 'assets', file), 'utf8')))]
        .filter(([key]) => !is_name(key)).map(([key, text]) => [key, plain(text)]);
      assert.deepEqual(texts.flatMap(([key, text]) => faults(key, text, language)), []);
      const whole = ease(texts.map(([, text]) => (/[.!?:]$/.test(text) ? text : `${text}.`)).join(' '), language);
      assert.ok(whole >= k_rules[language].whole, `on the whole ${whole.toFixed(1)}`);
    });
  }
}
