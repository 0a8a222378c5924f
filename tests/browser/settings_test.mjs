// The settings: the system's wish holds and is followed until the person chooses (WCAG 2.2 1.4.3 to 1.4.6, 2.3.3; CSS
// Media Queries 5: prefers-contrast, prefers-reduced-motion, prefers-color-scheme, forced-colors); what they agree to
// keep is kept, and nothing else; a browser that keeps nothing, or holds rubbish, costs nothing.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { waitForIdle } from './support/browser.mjs';
import { axe } from './support/checks.mjs';
import { ground } from './support/drawn.mjs';
import { find, tabTo } from './support/hands.mjs';
import { appForTests } from './support/run.mjs';
import { awaitScreen } from './support/walk.mjs';
import { byKeys, byMouse, byReader } from './support/ways.mjs';

const app = appForTests({});
const calm = { query: '?seed=3', calm: true };
const kept = (page) => page.evaluate(() => Object.entries(localStorage));
const keeps = (text) => `if (!localStorage.getItem('rehale.settings')) localStorage.setItem('rehale.settings', ${JSON.stringify(text)});`;

const k_light = 'fbf7ef', k_dark = '171418', k_light_contrast = 'ffffff', k_dark_contrast = '000000';  // theme.cpp
const isGround = async (page, wanted) => {
  await page.waitForTimeout(50);  // the browser tells of a changed wish in its own time
  for (let n = 0; n < 20 && await ground(page) !== wanted; n += 1) await page.waitForTimeout(50);
  assert.equal(await ground(page), wanted);
};

test("the system's wish for contrast, darkness and forced colours is followed while running", () => app.with(calm, async (page) => {
  await isGround(page, k_light);
  for (const [wish, wanted] of [
    [{ colorScheme: 'dark' }, k_dark], [{ contrast: 'more' }, k_dark_contrast], [{ colorScheme: 'light' }, k_light_contrast],
    [{ contrast: 'no-preference' }, k_light], [{ forcedColors: 'active' }, k_light_contrast], [{ forcedColors: 'none' }, k_light],
  ]) {
    await page.emulateMedia(wish);
    await isGround(page, wanted);
  }
}));

test("the person's choice goes before the system's, until they give it back", () => app.with({ ...calm, dark: true }, async (page) => {
  const way = byMouse(page);
  await page.emulateMedia({ contrast: 'more' });
  await isGround(page, k_dark_contrast);
  await way.press('button', 'Settings');
  await way.press('checkbox', 'Stronger contrast');
  await way.press('radio', 'Light');
  await way.press('button', 'Close');
  await isGround(page, k_light);
  await page.emulateMedia({ contrast: 'no-preference', forcedColors: 'active' });
  await isGround(page, k_light);
  await page.emulateMedia({ forcedColors: 'none' });
  await way.press('button', 'Settings');
  await way.press('button', 'Go back to what my device asks for');
  await way.press('button', 'Close');
  await isGround(page, k_dark);
}));

test('by keyboard alone: opened, changed, shut by Escape, and the focus is back on the button', () => app.with(calm, async (page) => {
  const way = byKeys(page);
  await tabTo(page, 'button', 'Settings');
  await page.keyboard.press('Enter');
  await find(page, 'dialog', 'Settings').waitFor({ state: 'attached' });
  await waitForIdle(page);
  await way.stepNumber('Size of the words', 2);
  assert.equal(await find(page, 'spinbutton', 'Size of the words').inputValue(), '150');
  assert.deepEqual(await axe(page), []);
  await page.keyboard.press('Escape');
  await waitForIdle(page);
  assert.equal(await page.evaluate(() => document.activeElement.dataset.id), 'look-button');
}));

test('nothing is kept unless the person agrees; then it holds next time; one tap takes it away', () => app.with(calm, async (page) => {
  const way = byReader(page);
  await way.press('button', 'Settings');
  await way.press('radio', 'Dark');
  await way.press('button', 'More: Size of the words');
  assert.deepEqual(await kept(page), []);
  await way.press('checkbox', 'Remember this on this device');
  assert.deepEqual(await kept(page), [['rehale.settings', '1 ground=dark text=125']]);
  await way.press('radio', 'Español');
  await page.waitForFunction(() => document.documentElement.lang === 'es');
  await waitForIdle(page);
  await page.reload();
  await awaitScreen(page, 'choose-device');
  await isGround(page, k_dark);
  assert.equal(await page.evaluate(() => document.documentElement.lang), 'es');
  await way.press('button', 'Ajustes');
  assert.equal(await page.locator('[data-id="look/size"]').inputValue(), '125');
  await way.press('checkbox', 'Guardar esto en mi aparato');
  assert.deepEqual(await kept(page), []);
  await page.reload();
  await awaitScreen(page, 'choose-device');
  await isGround(page, k_light);
  assert.deepEqual(page.complaints, []);
}));

test('what was kept does not make the start wait for the second part', () => app.with({
  ...calm, before: keeps('1 ground=dark contrast=yes still=yes text=150 hand=left slowly=yes volume=quiet language=en'),
}, async (page) => {
  await isGround(page, k_dark_contrast);
  await byReader(page).press('button', 'Spray inhaler');
  await awaitScreen(page, 'ready');
  assert.equal(await page.evaluate(() => window.rehale.probe().laterWaits), 0);
}));

for (const [why, before] of [
  ['throws at every touch', "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('denied', 'SecurityError'); } });"],
  ['refuses to write', "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };"],
]) {
  test(`storage that ${why} is told and costs nothing`, () => app.with({ ...calm, before }, async (page) => {
    const way = byReader(page);
    await awaitScreen(page, 'choose-device');
    await way.press('button', 'Settings');
    await way.press('radio', 'Dark');
    await way.press('checkbox', 'Remember this on this device');
    await page.getByText('This browser does not let us keep them. They hold until you leave.').waitFor({ state: 'attached' });
    assert.equal(await find(page, 'checkbox', 'Remember this on this device').isChecked(), false);
    await way.press('button', 'Close');
    await isGround(page, k_dark);
    assert.deepEqual(page.complaints, []);
  }));
}

for (const [why, rubbish] of Object.entries({
  'another form': '{"ground":"dark"}', 'a later version': '2 ground=dark', 'far too long': `1 ${'x'.repeat(100_000)}`,
  'no sense in it': '1 text=9999 ground=<b>', 'no text at all': '\u0000\uffff',
})) {
  test(`rubbish in storage changes nothing: ${why}`, () => app.with({
    ...calm, before: `localStorage.setItem('rehale.settings', ${JSON.stringify(rubbish)});`,
  }, async (page) => {
    await awaitScreen(page, 'choose-device');
    await isGround(page, k_light);
    assert.equal(await page.evaluate(() => localStorage.getItem('rehale.settings')), rubbish.startsWith('1 text') ? '1' : rubbish);
    assert.deepEqual(page.complaints, []);
  }));
}

test("the first of the system's languages that is here, and a change of it, are followed", () => app.with({ ...calm, locale: 'fi-FI' }, async (page) => {
  const setLanguages = (all) => page.evaluate((languages) => {
    Object.defineProperty(navigator, 'languages', { configurable: true, get: () => languages });
    window.dispatchEvent(new Event('languagechange'));
  }, all);
  assert.equal(await page.evaluate(() => document.documentElement.lang), 'en');
  await byReader(page).press('button', 'Spray inhaler');
  await awaitScreen(page, 'ready');
  await setLanguages(['fi', 'pt-BR', 'en']);
  await page.waitForFunction(() => document.documentElement.lang === 'pt');
  await waitForIdle(page);
  assert.equal(await page.evaluate(() => window.rehale.probe().screen), 'ready');
}));
