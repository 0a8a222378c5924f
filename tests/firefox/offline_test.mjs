// Firefox without a network: the page loaded again with its server gone; the page as one file, opened from a disk.
import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { probe, waitForIdle } from '../browser/support/browser.mjs';
import { isKept } from '../browser/support/kept.mjs';
import { answerOf, familyFromAssets, questionOnScreen } from '../browser/support/person.mjs';
import { serveSite } from '../browser/support/sites.mjs';
import { openFamily, takeCheck } from '../browser/support/walk.mjs';
import { byReader } from '../browser/support/ways.mjs';
import { firefoxForTests } from './support/firefox.mjs';

const app = firefoxForTests();
const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const [k_file, k_other_file] = [path.join(root, '.build/rehale.html'), path.join(root, 'README.md')];

// A whole check and its result handed over: every part of the page is needed for it.
async function checkAndHandOver(page, id) {
  const way = byReader(page);
  const family = familyFromAssets(id);
  await openFamily(way, id);
  await takeCheck(way, (read) => answerOf(family, questionOnScreen(family, read), { lacks: ['hold-breath'], holds: [] }));
  await way.press('button', 'Show this to your pharmacist or nurse');
  await page.getByRole('img', { name: /^QR code/ }).waitFor();
}

// Firefox complains of each: asked last.
const isRefused = (page, address) => page.evaluate((wanted) => fetch(wanted).then(() => false, () => true), address);

test('loaded again with the server gone, it does a whole check', async () => {
  const { url, close } = await serveSite();
  await app.with({ url, query: '?seed=3' }, async (page) => {
    await isKept(page);
    await close();
    await page.reload();
    await waitForIdle(page);
    assert.equal((await probe(page)).screen, 'choose-device');
    await checkAndHandOver(page, 'soft-mist');
    await byReader(page).press('button', 'Help and about');
    assert.match(await page.getByRole('main').innerText(), /This page now works without a network, too\./);
    assert.deepEqual(page.complaints, []);
    assert.ok(await isRefused(page, 'not-kept.txt'), 'the server still answers');
  });
});

test('as one file from a disk, under the rules for files that people have', async () => {
  assert.ok(existsSync(k_file), `${k_file} is missing: ci/build --single`);
  const url = pathToFileURL(k_file).href;
  await app.with({ url, query: '?seed=3' }, async (page) => {
    await checkAndHandOver(page, 'spray');
    await byReader(page).press('button', 'Help and about');
    assert.match(await page.getByRole('main').innerText(), /This page is one file\. It needs no network\./);
    assert.deepEqual(page.complaints, []);
    assert.ok(await isRefused(page, pathToFileURL(k_other_file).href), 'the check of where files come from is switched off');
  });
  await app.with({ url, query: '?lang=es' }, async (page) => {
    assert.equal(await page.getByRole('heading', { level: 1 }).textContent(), '¿Qué inhalador tiene usted?');
    assert.deepEqual(page.complaints, []);
  });
});
