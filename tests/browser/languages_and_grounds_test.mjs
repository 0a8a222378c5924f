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
const k_grounds = {
  dark: { colorScheme: 'dark', contrast: 'no-preference' }, 'dark, more contrast': { colorScheme: 'dark', contrast: 'more' },
  'light, more contrast': { colorScheme: 'light', contrast: 'more' }, light: { colorScheme: 'light', contrast: 'no-preference' },
};

async function speak(page, language) {
  await page.evaluate((now) => {
    Object.defineProperty(navigator, 'languages', { configurable: true, get: () => [now] });
    window.dispatchEvent(new Event('languagechange'));
  }, language);
  await page.waitForFunction((now) => document.documentElement.lang === now, language);
  await waitForIdle(page);
}

async function onGround(page, wish) {
  await page.emulateMedia(wish);
  await page.waitForTimeout(60);
  await waitForIdle(page);
}

// Words that stand out too little, as lines; seen: how many were measured.
async function faint(page, seen) {
  const all = await contrasts(page);
  seen.count += all.length;
  return all.filter(({ ratio }) => ratio < k_least).map(({ id, role, ratio }) => `${role} ${id} has ${ratio.toFixed(2)}:1`);
}

// Cut-off targets are screens_a11y_test.mjs' business: it knows the scroll areas.
const axeHere = async (page) => (await axe(page)).filter((text) => !text.startsWith('target-size'));

test('the measure finds words that are too faint', () => app.with({ query: '?seed=7', calm: true, size: k_size }, async (page) => {
  assert.ok((await contrasts(page)).length > 4);
  const title = async () => (await contrasts(page)).find(({ id }) => id === 'title').ratio;
  assert.ok(Math.abs(await title() - 13.8) < 0.3, `${await title()}`);  // look.md: ink on paper
  await page.evaluate(() => {
    const { left, top, width, height } = document.querySelector('h1').getBoundingClientRect();
    const cover = Object.assign(document.createElement('div'), { textContent: 'Which inhaler do you hold?' });
    Object.assign(cover.style, { position: 'fixed', left: `${left}px`, top: `${top}px`, width: `${width}px`, height: `${height}px`,
      background: '#fff', color: '#767676', font: 'bold 32px sans-serif' });
    document.body.append(cover);
  });
  // #767676 on white is 4.54:1, as W3C's own technique G18 and many tools print it.
  assert.ok(Math.abs(await title() - 4.54) < 0.1, `${await title()}`);
}));

test('every screen, in every language, on every ground', () => app.with({ query: '?seed=7', calm: true, size: k_size }, async (page) => {
  const problems = [], seen = { count: 0, screens: 0 };
  const visit = async (name, { dialog } = {}) => {
    await waitForIdle(page, { quiet: 150 });
    seen.screens += 1;
    for (const [ground, wish] of Object.entries(k_grounds)) {
      await onGround(page, wish);
      problems.push(...(await faint(page, seen)).map((problem) => `${name}, ${ground}: ${problem}`));
    }
    for (const language of dialog ? ['en'] : ['es', 'pt', 'en']) {
      if (!dialog) await speak(page, language);
      problems.push(...(await axeHere(page)).map((problem) => `${name}, ${language}: ${problem}`));
      problems.push(...(await faint(page, seen)).map((problem) => `${name}, ${language}: ${problem}`));
    }
  };
  await tour(byReader(page), visit).catch((error) => problems.push(`the tour ended: ${error.stack}`));
  assert.deepEqual(problems, []);
  assert.ok(seen.screens > 20 && seen.count > 800, `${JSON.stringify(seen)}`);
  assert.deepEqual(page.complaints, []);
}));
