// Every screen in every language and on every ground: axe-core in each language; words at least 7:1 (WCAG 2.2 1.4.6,
// look.md) as drawn, on each ground, measured on the picture. One page, switched by what the system wishes for: axe sees
// only the mirror, whose elements have no colours, so languages are not multiplied with grounds.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { waitForIdle } from './support/browser.mjs';
import { axe } from './support/checks.mjs';
import { contrasts } from './support/contrast.mjs';
import { appForTests } from './support/run.mjs';
import { tour } from './support/tour.mjs';
import { byReader } from './support/ways.mjs';

const app = appForTests();
const k_size = { width: 360, height: 900 };
const k_least = 7;
const k_grounds = {  // corner: the ground's colour without a dialog (theme.cpp)
  dark: { colorScheme: 'dark', contrast: 'no-preference', corner: '23,20,24' },
  'dark, more contrast': { colorScheme: 'dark', contrast: 'more', corner: '0,0,0' },
  'light, more contrast': { colorScheme: 'light', contrast: 'more', corner: '255,255,255' },
  light: { colorScheme: 'light', contrast: 'no-preference', corner: '251,247,239' },
};

async function speak(page, language) {
  await page.evaluate((now) => {
    Object.defineProperty(navigator, 'languages', { configurable: true, get: () => [now] });
    window.dispatchEvent(new Event('languagechange'));
  }, language);
  await page.waitForFunction((now) => document.documentElement.lang === now, language);
  await waitForIdle(page);
}

// Once the ground has come; behind a dialog it is shaded, and only another one than before.
async function onGround(page, { corner, ...wish }, before, dialog) {
  await page.emulateMedia(wish);
  for (const end = Date.now() + 20_000; ;) {
    await waitForIdle(page);
    const measured = await contrasts(page);
    if (dialog ? measured.corner !== before : measured.corner === corner) return measured;
    assert.ok(Date.now() < end, `the ground ${corner} does not come: ${measured.corner}`);
  }
}

// Words that stand out too little, as lines; seen: how many were measured.
function faint({ all }, seen) {
  seen.count += all.length;
  return all.filter(({ ratio }) => ratio < k_least).map(({ id, role, ratio }) => `${role} ${id} has ${ratio.toFixed(2)}:1`);
}

// Cut-off targets are screens_a11y_test.mjs' business: it knows the scroll areas.
const axeHere = async (page) => (await axe(page)).filter((text) => !text.startsWith('target-size'));

// Text of #767676 on white is 4.54:1, as W3C's own technique G18 and many tools print it.
const coverWith = (locator, words, { x = 0, y = 0, right = x } = {}) => locator.evaluate((element, [text, from, down, to]) => {
  const { left, top, width, height } = element.getBoundingClientRect();
  const cover = Object.assign(document.createElement('div'), { textContent: text });
  Object.assign(cover.style, { position: 'fixed', overflow: 'hidden', left: `${left + from}px`, top: `${top + down}px`,
    width: `${width - from - to}px`, height: `${height - 2 * down}px`, background: '#fff', color: '#767676', font: 'bold 32px sans-serif' });
  document.body.append(cover);
}, [words, x, y, right]);

test('the measure finds words that are too faint', () => app.with({ query: '?seed=7', calm: true, size: k_size }, async (page) => {
  assert.ok((await contrasts(page)).all.length > 4);
  const title = async () => (await contrasts(page)).all.find(({ id }) => id === 'title').ratio;
  assert.ok(Math.abs(await title() - 13.8) < 0.3, `${await title()}`);  // look.md: ink on paper
  await coverWith(page.getByRole('heading', { level: 1 }), 'Which inhaler do you hold?');
  assert.ok(Math.abs(await title() - 4.54) < 0.1, `${await title()}`);
}));

// Edges, spots and pictures, which stay around the faint words, do not make up for them.
test('and on controls of each kind', () => app.with({ query: '?seed=7', calm: true, size: k_size }, async (page) => {
  const way = byReader(page);
  const faintOn = async (control, around) => {
    const id = await control.getAttribute('data-id');
    const ratio = async () => (await contrasts(page)).all.find((each) => each.id === id)?.ratio;
    const before = await ratio();
    assert.ok(before >= k_least, `${id}: ${before}`);
    await coverWith(control, 'Faint words here', around);
    assert.ok(Math.abs(await ratio() - 4.54) < 0.1, `${id}: ${await ratio()}`);
    await page.evaluate(() => document.body.lastElementChild.remove());
  };
  await faintOn(page.getByRole('button', { name: 'Spray inhaler' }), { x: 130, y: 6, right: 6 });
  await way.press('button', 'Spray inhaler');
  await faintOn(page.getByRole('button', { name: 'Start', exact: true }), { x: 8, y: 5 });
  await way.press('button', 'Start');
  const answer = page.locator('#mirror :is(input[type=radio], input[type=checkbox])').first();
  await answer.evaluate((each) => each.click());
  await waitForIdle(page);
  await faintOn(answer, { x: 50, y: 5, right: 6 });
}));

test('every screen, in every language, on every ground', () => app.with({ query: '?seed=7', calm: true, size: k_size }, async (page) => {
  const problems = [], seen = { count: 0, screens: 0 };
  const visit = async (name, { dialog } = {}) => {
    await waitForIdle(page, { quiet: 150 });
    seen.screens += 1;
    let { corner } = await contrasts(page);
    for (const [label, wish] of Object.entries(k_grounds)) {
      const measured = await onGround(page, wish, corner, dialog);
      corner = measured.corner;
      problems.push(...faint(measured, seen).map((problem) => `${name}, ${label}: ${problem}`));
    }
    for (const language of dialog ? ['en'] : ['es', 'pt', 'en']) {
      if (!dialog) await speak(page, language);
      problems.push(...(await axeHere(page)).map((problem) => `${name}, ${language}: ${problem}`));
      problems.push(...faint(await contrasts(page), seen).map((problem) => `${name}, ${language}: ${problem}`));
    }
  };
  await tour(byReader(page), visit).catch((error) => problems.push(`the tour ended: ${error.stack}`));
  assert.deepEqual(problems, []);
  assert.ok(seen.screens > 20 && seen.count > 800, `${JSON.stringify(seen)}`);
  assert.deepEqual(page.complaints, []);
}));
