// "Where it goes": always 100 dots, the same in picture, table and words; still at rest; by keyboard alone; as
// axe and the other checks of every screen want it. What must hold: issue 3.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { k_sizes, probe, waitForIdle } from './support/browser.mjs';
import { find, focused, press, tabTo } from './support/hands.mjs';
import { appForTests } from './support/run.mjs';
import { lookOver } from './support/screen_checks.mjs';
import { awaitScreen, k_families } from './support/walk.mjs';
import { byKeys, byReader, byTouch } from './support/ways.mjs';

const app = appForTests();
const k_press = 'When you press: before or after you start to breathe in';
const k_see = 'See where the medicine goes';
// What a family lets one do: steppers with their ends, ticks.
const k_controls = {
  spray: { steppers: [k_press, 'How long you breathe in', 'How long you hold your breath'], ticks: ['I shake it first'] },
  'powder-lever': { steppers: ['How long you breathe in', 'How long you hold your breath', 'Air holes you cover'],
    ticks: ['I breathe out into it', 'I tip it when I breathe in', 'I load it twice'] },
  'powder-cover': { steppers: ['How long you breathe in', 'How long you hold your breath', 'Air holes you cover'],
    ticks: ['I breathe out into it', 'I load it twice'] },
  'soft-mist': { steppers: [k_press, 'How long you breathe in', 'How long you hold your breath'], ticks: [] },
};

async function open(way, family) {
  await awaitScreen(way.page, 'choose-device');
  await way.press('button', k_families[family]);
  await awaitScreen(way.page, 'ready');
  await way.press('button', k_see);
  await awaitScreen(way.page, 'where-it-goes');
}

// {yours, good}: dots by place, as the table tells them.
async function dots(page) {
  const rows = await page.getByRole('table').getByRole('row').evaluateAll((all) =>
    all.slice(1).map((row) => [...row.querySelectorAll('[role=cell]')].map((cell) => Number(cell.textContent))));
  assert.equal(rows.length, 5);
  return { yours: rows.map(([yours]) => yours), good: rows.map(([, good]) => good) };
}

const sum = (list) => list.reduce((a, b) => a + b, 0);

async function hundred(page) {
  const { yours, good } = await dots(page);
  assert.equal(sum(yours), 100, `${yours}`);
  assert.equal(sum(good), 100, `${good}`);
  const told = await page.getByRole('img').getAttribute('aria-label');
  const numbers = [...told.matchAll(/\D (\d+)[,.]/g)].map(([, number]) => Number(number));
  assert.deepEqual(numbers, [...yours, ...good], told);
  const lungs = yours[2] + yours[3];  // the words say the same number, inside the band
  const words = await page.getByRole('main').innerText();
  const [, likely, low, high] = words.match(/Lungs: about (\d+) of 100 dots\. It could be (\d+) to (\d+)\./).map(Number);
  assert.equal(likely, lungs);
  assert.ok(low <= likely && likely <= high, words);
  assert.match(words, new RegExp(`Lungs: ${lungs} of 100\\. Teaching estimate`));
  return yours;
}

const share = (page) => page.getByRole('status').filter({ hasText: /lungs/ }).innerText();

// To both ends of a stepper, a step at a time.
async function sweep(way, name) {
  const seen = new Set();
  for (const side of ['Less', 'More']) {
    const button = find(way.page, 'button', `${side}: ${name}`);
    for (let n = 0; n < 30 && await button.getAttribute('aria-disabled') !== 'true'; n += 1) {
      await way.press('button', `${side}: ${name}`);
      seen.add(String(await hundred(way.page)));
    }
  }
  assert.ok(seen.size > 1, `${name} changes nothing`);
}

describe('where it goes', { concurrency: 4 }, () => {
  for (const [family, { steppers, ticks }] of Object.entries(k_controls)) {
    test(`${family}: always 100 dots, whatever is set`, () => app.with({ size: k_sizes.phone }, async (page) => {
      const way = byReader(page);
      await open(way, family);
      const before = await hundred(page);
      for (const name of steppers) {
        await sweep(way, name);
        await way.press('button', 'Show a good puff');
      }
      for (const name of ticks) {
        await way.press('checkbox', name);
        assert.notDeepEqual(await hundred(page), before, name);
        await way.press('button', 'Show a good puff');
      }
      assert.deepEqual(await hundred(page), before);
      assert.deepEqual(page.complaints, []);
    }));
  }

  test('pressed early and not shaken: the words follow', () => app.with({ size: k_sizes.tablet, touch: true }, async (page) => {
    const way = byTouch(page);
    await open(way, 'spray');
    assert.equal(await share(page), 'Your lungs get as much as with a good puff.');
    await way.press('checkbox', 'I shake it first');
    assert.equal(await share(page), 'Your lungs get about two thirds of what a good puff brings.');
    await way.press('checkbox', 'I shake it first');
    for (let n = 0; n < 3; n += 1) await way.press('button', `Less: ${k_press}`);
    assert.equal(await share(page), 'Your lungs get about a third of what a good puff brings.');  // 1 s early
    assert.match(await page.getByRole('main').innerText(), /Teaching estimate, not a measurement/);
  }));

  test('by keyboard alone, and back where it came from', () => app.with({ size: k_sizes.screen }, async (page) => {
    await open(byKeys(page), 'powder-lever');
    assert.equal((await focused(page)).role, 'h1');
    await tabTo(page, 'checkbox', 'I load it twice');
    await press(page, 'Space');
    assert.equal(await share(page), 'Your lungs get about half of what a good puff brings.');
    await tabTo(page, 'button', 'How sure is this?');
    await press(page, 'Enter');
    assert.match(await page.getByRole('main').innerText(), /We guess that the first dose is lost whole/);
    await tabTo(page, 'button', 'Done');
    await press(page, 'Enter');
    assert.equal((await probe(page)).screen, 'ready');
  }));

  for (const [label, look] of Object.entries({
    'at 360 × 640, light': { size: k_sizes.phone }, 'at 1920 × 1080, dark': { size: k_sizes.screen, dark: true, calm: true },
  })) {
    test(`looked over, ${label}`, () => app.with(look, async (page) => {
      const way = byReader(page);
      await open(way, 'powder-cover');
      const problems = (await lookOver(page)).map((problem) => `first: ${problem}`);
      await way.press('checkbox', 'I breathe out into it');
      await way.press('button', 'How sure is this?');
      await waitForIdle(page, { quiet: 150 });
      const how = await page.evaluate(() => document.querySelector('h1').focus());
      problems.push(...(await lookOver(page, how)).map((problem) => `set: ${problem}`));
      assert.deepEqual(problems, []);
    }));
  }
});
