// Somebody who sets a practice with a sealed result, and somebody who does it: by any way of pressing.
import assert from 'node:assert/strict';
import { mkdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { waitForIdle } from './browser.mjs';
import { answerOf, familyFromAssets, questionOnScreen } from './person.mjs';
import { readByZbar } from './qr.mjs';
import { awaitScreen, takeCheck } from './walk.mjs';

export const k_passphrase = 'four plain green words';
export const k_clipboard = { permissions: ['clipboard-read', 'clipboard-write'] };
const k_out = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../../.build/set_practice');
const k_person = { lacks: ['hold-upright'], holds: [] };

export const hash = (link) => link.slice(link.indexOf('#'));

export async function copied(way) {
  await way.press('button', 'Copy the link');
  await way.page.waitForFunction(() => document.getElementById('polite').innerText.includes('Copied'));
  return way.page.evaluate(() => navigator.clipboard.readText());
}

// In the dialog of real elements. Returns the key file's text.
async function makeKey(way) {
  const { page } = way;
  await way.press('button', 'Seal the results');
  await way.begin('button', 'Make my key');
  const dialog = page.getByRole('dialog', { name: 'A passphrase for your key' });
  await dialog.waitFor();
  await page.keyboard.type('too short');
  await page.keyboard.press('Enter');
  await dialog.getByRole('alert').filter({ hasText: '12 letters or more' }).waitFor();
  await dialog.getByLabel('Passphrase').fill(k_passphrase);
  await page.keyboard.press('Tab');
  await page.keyboard.type(`${k_passphrase}!`);
  await page.keyboard.press('Enter');
  await dialog.getByRole('alert').filter({ hasText: 'not the same' }).waitFor();
  await dialog.getByLabel('The same once more').fill(k_passphrase);
  const waiting = page.waitForEvent('download');
  await page.keyboard.press('Enter');
  const download = await waiting;
  await dialog.waitFor({ state: 'detached' });
  await waitForIdle(page);
  assert.match(download.suggestedFilename(), /^rehale-key-20\d\d-\d\d-\d\d\.json$/);
  return readFileSync(await download.path(), 'utf8');
}

// {link, keyFile, presses}
export async function setPractice(way, { sealed = true } = {}) {
  const { page } = way;
  await awaitScreen(page, 'set-practice');
  await way.press('checkbox', 'Spray inhaler');
  const keyFile = sealed ? await makeKey(way) : '';
  await way.press('button', 'Make the link');
  await awaitScreen(page, 'set-link');
  await page.getByRole('img', { name: /^QR code/ }).waitFor();
  return { link: await copied(way), keyFile };
}

// {link, run, advice} of the person who opened the link.
export async function doIt(way) {
  const { page } = way;
  const family = familyFromAssets('spray');
  await awaitScreen(page, 'ready');
  assert.equal(await page.evaluate(() => location.hash), '', 'dropped from the address');
  assert.match(await page.getByRole('main').innerText(), /Your care team asks you to do this check by \d+ \w+ 20\d\d\./);
  await way.press('button', 'Start');
  await takeCheck(way, (read) => answerOf(family, questionOnScreen(family, read), k_person));
  const advice = await page.getByRole('main').getByRole('heading', { level: 2 }).allInnerTexts();
  if (advice.length === 0) throw new Error('the result has no headings');
  await way.press('button', 'Show this to your pharmacist or nurse');
  await awaitScreen(page, 'hand-over');
  await page.getByRole('img', { name: /^QR code/ }).waitFor();
  await waitForIdle(page);
  assert.match(await page.getByRole('main').innerText(), /This is for the one who sent you the link\. Only they can open it\./);
  mkdirSync(k_out, { recursive: true });
  const file = path.join(k_out, 'sealed.png');
  await page.screenshot({ path: file, clip: await page.getByRole('img').boundingBox() });
  const link = await copied(way);
  assert.deepEqual(readByZbar(file), [link]);
  return { link, advice, run: JSON.parse(await page.evaluate(() => window.rehale.exportRun())) };
}
