// Criteria of WCAG 2.2 that axe-core has no rule for and no other test of ours covers, each by its number, on the real
// site. The table of all criteria: DEVELOPERS.md.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { probe, waitForIdle } from './support/browser.mjs';
import { k_voices, playVoices } from './support/fake_voice.mjs';
import { appForTests } from './support/run.mjs';
import { awaitScreen } from './support/walk.mjs';
import { byReader } from './support/ways.mjs';

const app = appForTests({});
const voices = `(${playVoices})(${JSON.stringify({ voices: k_voices })});`;
const k_sizes = { 'on a phone': { width: 360, height: 640 }, 'at 400 % zoom': { width: 320, height: 256 }, 'on a screen': { width: 1280, height: 800 } };

async function toQuestion(page) {
  const way = byReader(page);
  await way.press('button', 'Spray inhaler');
  await awaitScreen(page, 'ready');
  await way.press('button', 'Start');
  await awaitScreen(page, 'question');
}

const k_places = {
  'the first screen': async () => {},
  'a question': toQuestion,
  'the settings': async (page) => byReader(page).press('button', 'Settings'),
  'help and about': async (page) => byReader(page).press('button', 'Help and about'),
  'where it goes': async (page) => {
    await byReader(page).press('button', 'Spray inhaler');
    await awaitScreen(page, 'ready');
    await byReader(page).press('button', 'See where the medicine goes');
  },
};

// The focused element: its id, and whether its middle (or, where it is taller than the view, any part) can be hit.
const stop = (page) => page.evaluate(() => {
  const element = document.activeElement;
  if (!element?.dataset?.id) return { id: '' };
  const { left, top, width, height } = element.getBoundingClientRect();
  const places = [0.5, 0.1, 0.3, 0.7, 0.9].map((share) => document.elementFromPoint(left + width / 2, top + height * share));
  const style = getComputedStyle(element);
  return { id: element.dataset.id, hit: places.some((at) => at && element.contains(at)),
    ring: parseFloat(style.outlineWidth) >= 2 && style.outlineStyle === 'solid' };
});

for (const [place, go] of Object.entries(k_places)) {
  for (const [label, size] of Object.entries(k_sizes)) {
    test(`2.1.2, 2.4.3, 2.4.7, 2.4.11, 3.2.1: Tab through ${place}, ${label}`, () => app.with({ query: '?seed=3', calm: true, size, before: voices }, async (page) => {
      await page.locator('[data-id="read-aloud"]').waitFor({ state: 'attached' });
      await go(page);
      await waitForIdle(page, { quiet: 150 });
      const before = { screen: (await probe(page)).screen, log: await page.evaluate(() => window.rehale.exportRun()) };
      const order = await page.evaluate(() => {
        const all = [...document.querySelectorAll('#mirror :is(button, a[href], input)')].filter((each) => !each.closest('[inert]'));
        const groups = new Set();  // of radios only one is a stop
        return all.filter((each) => each.type !== 'radio' || (!groups.has(each.name) && groups.add(each.name))).length;
      });
      const met = [];
      for (let n = 0; n < order * 2 + 4; n += 1) {
        await page.keyboard.press('Tab');
        await waitForIdle(page, { quiet: 40 });
        const here = await stop(page);
        if (here.id === '' || met.some(({ id }) => id === here.id)) { if (met.length >= order) break; continue; }
        met.push(here);
      }
      assert.equal(met.length, order, `stops: ${met.map(({ id }) => id)}`);
      assert.deepEqual(met.filter(({ hit }) => !hit).map(({ id }) => `${id} is covered`), []);
      assert.deepEqual(met.filter(({ ring }) => !ring).map(({ id }) => `${id} has no ring`), []);
      assert.deepEqual({ screen: (await probe(page)).screen, log: await page.evaluate(() => window.rehale.exportRun()) }, before);
    }));
  }
}

test('2.2.1, 2.2.2, 2.3.1: left alone for 20 s nothing moves, flashes or ends', () => app.with({ query: '?seed=3' }, async (page) => {
  await toQuestion(page);
  await waitForIdle(page, { quiet: 500 });
  const before = await probe(page);
  const shot = await page.screenshot();
  await page.waitForTimeout(20_000);
  assert.equal((await probe(page)).frames, before.frames);
  assert.equal((await probe(page)).screen, 'question');
  assert.ok(shot.equals(await page.screenshot()));
}));

test('2.1.4: no letter, digit or sign is a shortcut', () => app.with({ query: '?seed=3', calm: true }, async (page) => {
  await toQuestion(page);
  const before = await page.evaluate(() => [window.rehale.exportRun(), document.title, document.activeElement.dataset.id]);
  for (const key of 'abcdefghijklmnopqrstuvwxyz0123456789.,-+*/?!#') await page.keyboard.press(key);
  await waitForIdle(page);
  assert.deepEqual(await page.evaluate(() => [window.rehale.exportRun(), document.title, document.activeElement.dataset.id]), before);
}));

test('3.2.2: choosing an answer does not go on by itself', () => app.with({ query: '?seed=3', calm: true }, async (page) => {
  await toQuestion(page);
  const log = await page.evaluate(() => window.rehale.exportRun());
  const answer = page.locator('#mirror :is(input[type=radio], input[type=checkbox])').first();
  await answer.evaluate((element) => element.click());
  await waitForIdle(page);
  assert.ok(await answer.isChecked());
  assert.equal(await page.evaluate(() => window.rehale.exportRun()), log);
}));

test('3.2.3, 3.2.4, 3.2.6: settings and help come in the same order with the same names on every screen', () => app.with({ query: '?seed=3', calm: true }, async (page) => {
  const corners = () => page.evaluate(() => ['help', 'look-button'].map((id) => document.querySelector(`[data-id="${id}"]`))
    .map((each, n, all) => [each.textContent, each.getBoundingClientRect().left, n === 0 || Boolean(all[0].compareDocumentPosition(each) & 4)].join()));
  const first = await corners();
  await byReader(page).press('button', 'Spray inhaler');
  await awaitScreen(page, 'ready');
  assert.deepEqual(await corners(), first);
  await byReader(page).press('button', 'Start');
  await awaitScreen(page, 'question');
  assert.deepEqual(await corners(), first);
}));
