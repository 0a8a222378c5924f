// Reading aloud in the page, with speech that is played (support/fake_voice.mjs): headless Chromium has no voices.
// Sources: users.md 6.1 (local voices, sentences, stalls, stops with the screen, hidden where there is no voice; every
// spoken word is also on screen), WCAG 2.2 1.4.2 and 4.1.2; of a shared device users.md 3.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { setOf } from '../../ci/lib/named_set.mjs';
import { waitForIdle } from './support/browser.mjs';
import { axe } from './support/checks.mjs';
import { k_voices, playVoices } from './support/fake_voice.mjs';
import { find, tabTo } from './support/hands.mjs';
import { underPolicy } from './support/policy.mjs';
import { appForTests } from './support/run.mjs';
import { awaitScreen } from './support/walk.mjs';
import { byMouse, byReader } from './support/ways.mjs';

const app = appForTests();
const speaks = (wish) => `(${playVoices})(${JSON.stringify({ voices: k_voices, ...wish })});`;
const wish = (more = {}) => ({ query: '?seed=3', calm: true, before: speaks(more) });
const said = (page) => page.evaluate(() => window.said);
const button = (page, name = 'Read aloud') => find(page, 'button', name);
// Words take long enough that no reading ends by itself while a test waits; a stop is a stop of the voice, too.
const k_long = { word_ms: 5000 };
async function stopped(page) {
  await offered(page);
  assert.equal(await page.evaluate(() => speechSynthesis.speaking), false);
}
const offered = (page) => button(page).waitFor({ state: 'attached' });

// Until the button says again that it would read.
async function readToTheEnd(page) {
  await page.waitForFunction(() => document.querySelector('[data-id="read-aloud"]').textContent === 'Stop reading');
  await page.waitForFunction(() => document.querySelector('[data-id="read-aloud"]').textContent === 'Read aloud');
  await waitForIdle(page);
  return (await said(page)).map(({ text }) => text);
}

async function toQuestion(page) {
  const way = byReader(page);
  await offered(page);
  await way.press('button', 'Spray inhaler');
  await awaitScreen(page, 'ready');
  await way.press('button', 'Start');
  await awaitScreen(page, 'question');
  return way;
}

test('the question and its answers are read as they stand on the screen, by a voice of the device', () => app.with({ ...wish(), route: underPolicy }, async (page) => {
  await toQuestion(page);
  assert.deepEqual(await said(page), [], 'it began by itself');
  await byMouse(page).begin('button', 'Read aloud');
  const texts = await readToTheEnd(page);
  const shown = await page.evaluate(() => [document.querySelector('h1').textContent,
    ...[...document.querySelectorAll('#mirror :is(input[type=radio], input[type=checkbox])')].map((each) => each.ariaLabel)]);
  assert.ok(shown.length > 3);
  let at = 0;
  for (const words of shown) {
    const start = texts.findIndex((text, n) => n >= at && words.startsWith(text));
    assert.ok(start >= 0, `'${words}' is not read after ${texts.slice(0, at)}`);
    let left = words;
    for (at = start; left; at += 1) {
      assert.ok(left.startsWith(texts[at]), `'${left}' is read as '${texts[at]}'`);
      left = left.slice(texts[at].length).trim();
    }
  }
  assert.ok(texts.every((text) => text.length <= 150));
  assert.ok(!texts.some((text) => ['Back', 'Help and about', 'Settings', 'Stop reading'].includes(text)));
  assert.deepEqual([...new Set((await said(page)).map(({ voice, rate }) => `${voice} ${rate}`))], ['near British 0.9']);
  assert.deepEqual(page.complaints, []);
}));

test('by keyboard: the button keeps the focus, says what it does now, and stops', () => app.with(wish(k_long), async (page) => {
  await toQuestion(page);
  await tabTo(page, 'button', 'Read aloud');
  await page.keyboard.press('Enter');
  await button(page, 'Stop reading').waitFor({ state: 'attached' });
  assert.equal(await page.evaluate(() => document.activeElement.textContent), 'Stop reading');
  assert.deepEqual(await axe(page), []);
  await page.keyboard.press('Enter');
  await stopped(page);
  const before = (await said(page)).length;
  await page.waitForTimeout(1000);
  assert.equal((await said(page)).length, before);
}));

test('another question, a dialog, and a hidden page stop it', () => app.with(wish(k_long), async (page) => {
  const way = await toQuestion(page);
  const begin = async () => {
    await way.begin('button', 'Read aloud');
    await button(page, 'Stop reading').waitFor({ state: 'attached' });
  };
  await begin();
  await way.begin('button', "I'm not sure");
  await stopped(page);
  await begin();
  await way.begin('button', 'Settings');
  await page.waitForFunction(() => document.querySelector('[data-id="read-aloud"]').textContent === 'Read aloud');
  assert.equal(await page.evaluate(() => speechSynthesis.speaking), false);
  await page.keyboard.press('Escape');
  await waitForIdle(page);
  await begin();
  await page.evaluate(() => {
    Object.defineProperty(document, 'hidden', { configurable: true, get: () => true });
    document.dispatchEvent(new Event('visibilitychange'));
    Object.defineProperty(document, 'hidden', { configurable: true, get: () => false });
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await stopped(page);
}));

test('a device without a voice of its own for the language offers nothing, and the settings say why', () => app.with(wish({ voices: k_voices.slice(0, 1).concat(k_voices[3]) }), async (page) => {
  const way = byReader(page);
  await page.waitForFunction(() => window.speechSynthesis.getVoices().length > 0);
  await waitForIdle(page, { quiet: 300 });
  assert.equal(await button(page).count(), 0);
  await way.press('button', 'Settings');
  assert.equal(await page.locator('[data-id="look/voice-tell"]').textContent(), 'We found no voice on this device for this language. So we cannot read to you here.');
  assert.equal(await page.locator('[data-id="look/slowly/on"]').count(), 0);
  await way.press('radio', 'Español');
  await page.waitForFunction(() => document.documentElement.lang === 'es');
  await way.press('button', 'Cerrar');
  await way.press('button', 'Leer en voz alta');
  await page.waitForFunction(() => window.said.length > 3);
  assert.ok((await said(page)).every(({ lang }) => lang === 'es-MX'));
}));

// What would offer it has come, and had its time.
async function hasLooked(page) {
  await page.waitForFunction(() => performance.getEntriesByType('resource').some(({ name }) => name.endsWith('/read_aloud.js')));
  await waitForIdle(page, { quiet: 300 });
}

test('no voices at all, and no speech at all', async () => {
  await app.with({ query: '?seed=3', calm: true }, async (page) => {  // headless Chromium itself
    assert.equal(await page.evaluate(() => speechSynthesis.getVoices().length), 0);
    await hasLooked(page);
    assert.equal(await button(page).count(), 0);
  });
  await app.with({ query: '?seed=3', calm: true, before: "Object.defineProperty(window, 'speechSynthesis', { value: undefined });" }, async (page) => {
    await waitForIdle(page, { quiet: 300 });
    assert.equal(await button(page).count(), 0);
    assert.deepEqual(page.complaints, []);
  });
});

test('more slowly and softly, when asked for in the settings', () => app.with(wish(), async (page) => {
  const way = byReader(page);
  await offered(page);
  await way.press('button', 'Settings');
  await way.press('checkbox', 'Read more slowly');
  await way.press('radio', 'Quiet');
  await way.press('button', 'Close');
  await way.begin('button', 'Read aloud');
  await page.waitForFunction(() => window.said.length > 1);
  assert.deepEqual([...new Set((await said(page)).map(({ rate, volume }) => `${rate} ${volume}`))], ['0.7 0.25']);
}));

// ---- the own speech of a shared device (web/js/kiosk_speech.js)
const quiet = (page, more = 0) => page.waitForFunction((count) => window.said.length > count && !speechSynthesis.speaking, more);

const k_own_words = Object.entries(JSON.parse(readFileSync(new URL('../../assets/text/en.json', import.meta.url), 'utf8')).kiosk)
  .filter(([key]) => key.startsWith('say-')).map(([, word]) => word);

// Every piece of it stands in the mirror or is the app's own word for a role or a state.
async function assertIsShown(page, texts) {
  const shown = await page.evaluate(() => [...document.querySelectorAll('#mirror *, #mirror-notes *, #polite')]
    .flatMap((each) => [each.textContent, each.ariaLabel]).join('\n'));
  for (const piece of texts.flatMap((text) => text.split(/(?<=[.!?]) /))) {
    const bare = piece.replace(/\.$/, '').replace(/^(Choice|Tick box), \d+ of \d+$/, '$1');
    assert.ok(shown.includes(bare) || k_own_words.includes(bare), `'${bare}' is said and not shown`);
  }
}

// What a key made it say.
async function saidBy(page, key) {
  const before = (await said(page)).length;
  await page.keyboard.press(key);
  await quiet(page, before);
  const texts = (await said(page)).slice(before).map(({ text }) => text);
  await assertIsShown(page, texts);
  return texts.join(' ');
}

async function sayUntil(page, pattern) {
  for (let n = 0; n < 40; n += 1) {
    const words = await saidBy(page, 'ArrowRight');
    if (pattern.test(words)) return words;
  }
  throw new Error(`never said: ${pattern}`);
}

test('a shared device speaks by itself when asked: each screen, what has the focus, what a press changes; four keys do it all', () => app.with({ ...wish({ word_ms: 1 }), query: '?seed=3#kiosk', route: underPolicy }, async (page) => {
  await page.locator('[data-id="aloud"]').waitFor({ state: 'attached' });
  await page.keyboard.press('ArrowRight');
  await page.waitForTimeout(700);
  assert.deepEqual(await said(page), [], 'it began by itself');
  assert.equal(await saidBy(page, 'Escape'), 'Read each screen aloud (use headphones). On.');
  await page.waitForFunction(() => window.said.at(-1)?.text === 'Start');  // the last word of this screen
  const reads_all = (await said(page)).map(({ text }) => text).join(' ');
  assert.match(reads_all, /Do you use your inhaler well\? .*Arrow keys move/);
  const alternative = await page.locator('[data-id="picture"]').getAttribute('aria-label');
  assert.ok(reads_all.includes(alternative), 'the picture is told');
  assert.deepEqual(await axe(page), []);
  assert.equal(await sayUntil(page, /Switch/), 'Read each screen aloud (use headphones). Switch. On.');
  assert.equal(await sayUntil(page, /^Start/), 'Start. Button.');
  assert.equal(await saidBy(page, 'Escape'), 'Start. Button.');
  assert.match(await saidBy(page, 'Escape'), /Do you use your inhaler well\?/);
  await page.keyboard.press('Enter');
  await awaitScreen(page, 'choose-device');
  await page.waitForFunction(() => window.said.some(({ text }) => text === 'Which inhaler do you hold?'));
  assert.match(await sayUntil(page, /^(Which[^?]*\? )?Spray inhaler/), /^(Which[^?]*\? )?Spray inhaler\. Button\. \w/);  // cuts off the rest
  await page.keyboard.press('Enter');
  await awaitScreen(page, 'ready');
  await sayUntil(page, /^Start\. Button/);
  await page.keyboard.press('Enter');
  await awaitScreen(page, 'question');
  const choice = await sayUntil(page, /(Choice|Tick box), 1 of \d/);
  const { name, after } = await page.evaluate(() => ({ name: document.activeElement.ariaLabel, after: window.said.length }));
  assert.ok(choice.includes(name) && /Not (chosen|ticked)\.$/.test(choice), choice);
  await page.keyboard.press('Enter');
  await quiet(page, after);
  assert.match((await said(page)).at(-1).text, /(Chosen|Ticked)\.$/);
  assert.ok(await page.evaluate(() => document.activeElement.checked));
  assert.deepEqual(page.complaints, []);
}));

test('elsewhere the focus is never spoken: a screen reader may be running', () => app.with(wish(), async (page) => {
  await offered(page);
  for (const key of ['Tab', 'Tab', 'ArrowDown', 'Escape', 'Tab']) await page.keyboard.press(key);
  await page.waitForTimeout(700);
  assert.deepEqual(await said(page), []);
}));

test('its script comes after the first screen, and is small', async () => {
  await app.with(wish(), async (page) => {
    await offered(page);
    const seen = await page.evaluate(() => performance.getEntriesByType('resource').find(({ name }) => name.endsWith('later/read_aloud.js'))?.startTime);
    const first = await page.evaluate(() => performance.getEntriesByType('resource').find(({ name }) => name.endsWith('content/text/en.json')).responseEnd);
    assert.ok(seen > first, `asked for at ${seen} ms, the words were here at ${first} ms`);
  });
  const bytes = readFileSync(path.join(setOf(fileURLToPath(new URL('../../.build/site', import.meta.url))), 'later/read_aloud.js')).length;
  assert.ok(bytes < 6000, `${bytes} bytes`);
});
