// Firefox: a whole check in each family through its accessibility tree alone, by a person with one known wrong habit,
// who is told that one and no other (soft-mist: screens_test, which then hands it over). Whose answer shows what:
// assets/families/<family>/{procedure,questions}.json.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { assertOnlyAdvice } from '../browser/support/advice.mjs';
import { answerOf, familyFromAssets, questionOnScreen } from '../browser/support/person.mjs';
import { openFamily, takeCheck } from '../browser/support/walk.mjs';
import { byReader } from '../browser/support/ways.mjs';
import { firefoxForTests } from './support/firefox.mjs';

const app = firefoxForTests();
const k_lacks = { spray: 'breathe-then-press' };
const k_holds = { 'powder-lever': 'shakes-it', 'powder-cover': 'breathes-slowly' };

async function toldOnly(family, person, name) {
  await app.with({ query: '?seed=5' }, async (page) => {
    const way = byReader(page);
    await openFamily(way, family.id);
    await takeCheck(way, (question) => answerOf(family, questionOnScreen(family, question), person));
    await assertOnlyAdvice(page, family, { technique: person.lacks[0], name });
    assert.deepEqual(page.complaints, []);
  });
}

for (const [id, technique] of Object.entries(k_lacks)) {
  const family = familyFromAssets(id);
  const { name } = family.techniques.find((one) => one.id === technique);
  test(`${id}: lacks ${technique}`, () => toldOnly(family, { lacks: [technique], holds: [] }, name));
}

for (const [id, rule] of Object.entries(k_holds)) {
  const family = familyFromAssets(id);
  const { name, rules_out: technique } = family.misconceptions.find((one) => one.id === rule);
  test(`${id}: holds ${rule}`, () => toldOnly(family, { lacks: [technique], holds: [rule] }, name));
}
