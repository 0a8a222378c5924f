// Firefox, at a phone's and a large screen's size, by real clicks: the start of a run-through, where it goes, words at
// 200 %, Spanish, a result handed over. What is drawn lies where the elements say; nothing is complained about.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { readFileSync } from 'node:fs';
import { assertOnlyAdvice } from '../browser/support/advice.mjs';
import { heading } from '../browser/support/answers.mjs';
import { answerOf, familyFromAssets, questionOnScreen } from '../browser/support/person.mjs';
import { k_sizes } from '../browser/support/browser.mjs';
import { find, focused, rest } from '../browser/support/hands.mjs';
import { readByZbar } from '../browser/support/qr.mjs';
import { stepsOf } from '../browser/support/rehearse.mjs';
import { awaitScreen, openFamily, takeCheck } from '../browser/support/walk.mjs';
import { byMouse, byReader } from '../browser/support/ways.mjs';
import { firefoxForTests } from './support/firefox.mjs';
import { lookAt } from './support/look.mjs';

const app = firefoxForTests();
const k_both = Object.entries({ 'a phone': k_sizes.phone, 'a large screen': k_sizes.screen });
const spanish = JSON.parse(readFileSync(new URL('../../assets/text/es.json', import.meta.url), 'utf8'));

async function ready(way, family) {
  await awaitScreen(way.page, 'choose-device');
  await way.press('button', family.name);
  await awaitScreen(way.page, 'ready');
}

const told = (page) => page.getByRole('main').innerText();

// Dots by place, the person's own.
const dots = (page) => page.getByRole('table').getByRole('row').evaluateAll((rows) =>
  rows.slice(1).map((row) => Number(row.querySelector('[role=cell]').textContent)));

async function whereItGoes(way) {
  const { page } = way;
  await way.press('button', 'See where the medicine goes');
  await awaitScreen(page, 'where-it-goes');
  const good = await dots(page);
  await way.press('checkbox', 'I shake it first');
  const unshaken = await dots(page);
  for (const list of [good, unshaken]) assert.equal(list.reduce((sum, n) => sum + n, 0), 100, `${list}`);
  assert.notDeepEqual(unshaken, good);
  await lookAt(page, 'where-it-goes');
  await way.press('button', 'Back');
  await awaitScreen(page, 'ready');
}

async function runThrough(way, family) {
  const { page } = way;
  const [first] = stepsOf(family.id).once;
  await way.press('button', 'Do a timed run-through');
  await way.press('button', 'Start');
  await lookAt(page, 'run-through');
  await way.press('button', first.label);
  await way.press('button', 'I am done');
  assert.match(await told(page), /We cannot see your breath\./);
  const { rehearsals: [take] } = JSON.parse(await page.evaluate(() => window.rehale.exportRun()));
  assert.deepEqual(take.acts.map(({ step }) => step), [first.id]);
}

async function largeWordsInSpanish(way) {
  const { page } = way;
  const height = () => find(page, 'heading', undefined, { level: 1 }).evaluate((h1) => h1.getBoundingClientRect().height);
  const before = await height();
  await way.press('button', 'Settings');
  assert.equal(await find(page, 'button', 'Help and about').count(), 0);  // behind the dialog: not in the tree
  for (let n = 0; n < 4; n += 1) await way.press('button', 'More: Size of the words');
  assert.equal(await find(page, 'spinbutton', 'Size of the words').inputValue(), '200');
  await lookAt(page, 'settings-200');
  await way.press('radio', 'Español');
  await page.waitForFunction(() => document.documentElement.lang === 'es');
  await rest(page);
  await way.press('button', spanish.kit.close);
  assert.equal(await page.title(), spanish.choose.title);
  assert.equal(await heading(page), spanish.choose.ask);
  assert.deepEqual(await focused(page), { role: 'button', name: spanish.kit.look, id: 'look-button' });
  assert.ok(await height() > 1.5 * before, `${await height()} px after ${before} px`);
  await find(page, 'button', spanish.families['soft-mist'].name).waitFor();
  await lookAt(page, 'start-200-es');
}

describe('by mouse', () => {
  for (const [label, size] of k_both) {
    test(`where it goes, and the start of a run-through, on ${label}`, () => app.with({ query: '?seed=2', size }, async (page) => {
      const way = byMouse(page);
      const family = familyFromAssets('spray');
      await ready(way, family);
      await whereItGoes(way);
      await runThrough(way, family);
      assert.deepEqual(page.complaints, []);
    }));
    test(`words at 200 %, then in Spanish, on ${label}`, () => app.with({ size }, async (page) => {
      await lookAt(page, 'start');
      await largeWordsInSpanish(byMouse(page));
      assert.deepEqual(page.complaints, []);
    }));
  }
});

const advice = (page) => page.getByRole('main').getByRole('heading', { level: 2 }).allInnerTexts();

// The result, and its QR code as a link.
async function handOver(page) {
  await lookAt(page, 'result');
  const given = await advice(page);
  await byMouse(page).press('button', 'Show this to your pharmacist or nurse');
  await page.getByRole('img', { name: /^QR code/ }).waitFor();
  const [link] = readByZbar(await lookAt(page, 'hand-over'));
  assert.deepEqual(page.complaints, []);
  return { given, link };
}

test('soft-mist: lacks slow-deep; handed over: its QR code, opened on a large screen, gives the same advice and code', async () => {
  const family = familyFromAssets('soft-mist');
  const technique = 'slow-deep';
  const { name } = family.techniques.find(({ id }) => id === technique);
  const first = await app.with({ query: '?seed=5' }, async (page) => {
    await openFamily(byReader(page), family.id);
    await takeCheck(byReader(page), (read) => answerOf(family, questionOnScreen(family, read), { lacks: [technique], holds: [] }));
    await assertOnlyAdvice(page, family, { technique, name });
    return handOver(page);
  });
  assert.ok(first.link.startsWith(`${app.site.url}#r=R1`), first.link);
  await app.with({ url: first.link, size: k_sizes.screen }, async (page) => {
    await awaitScreen(page, 'result');
    assert.deepEqual(await handOver(page), first);
  });
});
