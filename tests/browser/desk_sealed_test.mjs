// Sealed results at the desk, the whole loop: an educator makes a key and a link, a person does the check in another
// browser context, the desk opens what came out with the key file. A wrong key, a called-off dialog, a doubled seal.
import assert from 'node:assert/strict';
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { k_sizes, waitForIdle } from './support/browser.mjs';
import { underPolicy } from './support/policy.mjs';
import { doIt, hash, k_clipboard, k_passphrase, setPractice } from './support/set_practice.mjs';
import { appForTests } from './support/run.mjs';
import { awaitScreen } from './support/walk.mjs';
import { byKeys, byTouch } from './support/ways.mjs';

const app = appForTests();
const k_out = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../.build/desk_sealed');

function keyOnDisk(name, text) {
  mkdirSync(k_out, { recursive: true });
  const file = path.join(k_out, name);
  writeFileSync(file, text);
  return file;
}

async function paste(way, text, name = 'Add results') {
  const { page } = way;
  await way.begin('button', name);
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Codes or links, one a line').fill(text);
  await dialog.getByRole('button', { name: 'Read them' }).click();
  await dialog.waitFor({ state: 'detached' });
  await waitForIdle(page);
}

// Picks the key file, and types what is to be typed.
async function unlock(way, file, passphrases) {
  const { page } = way;
  const choosing = page.waitForEvent('filechooser');
  await way.begin('button', 'Open sealed results with my key');
  await (await choosing).setFiles(file);
  const dialog = page.getByRole('dialog', { name: 'Open your key' });
  await dialog.waitFor();
  for (const [n, passphrase] of passphrases.entries()) {
    await dialog.getByLabel('Passphrase').fill(passphrase);
    await page.keyboard.press('Enter');
    if (n < passphrases.length - 1) await dialog.getByRole('alert').filter({ hasText: 'does not open the key' }).waitFor();
  }
  await dialog.waitFor({ state: 'detached' });
}

const said = (page) => page.getByRole('main').innerText();

describe('sealed results are opened at the desk', () => {
  for (const [name, wayOf, size, touch] of [['by keyboard', byKeys, k_sizes.screen, false], ['by finger', byTouch, k_sizes.phone, true]]) {
    test(name, async () => {
      const wish = { size, touch, calm: true, context: k_clipboard, route: underPolicy };
      let mine, others, done, plain;
      await app.with({ ...wish, query: '#set' }, async (page) => { mine = await setPractice(wayOf(page)); });
      await app.with({ ...wish, query: '#set' }, async (page) => { others = await setPractice(wayOf(page)); });
      await app.with({ ...wish, query: `?seed=5${hash(mine.link)}` }, async (page) => { done = await doIt(wayOf(page)); });
      await app.with({ ...wish, query: '#desk' }, async (page) => {
        const way = wayOf(page);
        await way.press('button', 'Read results');
        await paste(way, `${done.link}\n${done.link}\n`);
        await page.getByText('Sealed, open with your key: 2.').first().waitFor(); // the reading goes on after the dialog
        await unlock(way, keyOnDisk(`${name}-other.json`, others.keyFile), [k_passphrase]);
        await page.getByText('Sealed, not opened by this key: 2.').first().waitFor();
        await unlock(way, keyOnDisk(`${name}-mine.json`, mine.keyFile), ['four plain green word', k_passphrase]);
        await page.getByText('Came more than once, counted once: 1.').first().waitFor();
        await waitForIdle(page);
        plain = await said(page);
        assert.match(plain, /Results read: 1\./);
        assert.doesNotMatch(plain, /Sealed/);
        await way.press('button', 'See one by one');
        await way.press('button', /^Spray inhaler\./);
        await awaitScreen(page, 'desk-person');
        assert.match(await said(page), /Self-reported, not observed/);
        assert.match(await said(page), /Can on top/, 'the step that this person gets wrong');
        assert.equal(await page.evaluate(async () => JSON.stringify([{ ...localStorage }, { ...sessionStorage },
          (await indexedDB.databases()).length])), '[{},{},0]', 'nothing of it is stored');
        assert.deepEqual(page.complaints, []);
      });
    });
  }

  test('called off, nothing is lost', async () => {
    let made, done;
    const wish = { calm: true, context: k_clipboard };
    await app.with({ ...wish, query: '#set' }, async (page) => { made = await setPractice(byKeys(page)); });
    await app.with({ ...wish, query: `?seed=7${hash(made.link)}` }, async (page) => { done = await doIt(byKeys(page)); });
    await app.with({ ...wish, query: '#desk' }, async (page) => {
      const way = byKeys(page);
      await way.press('button', 'Read results');
      await paste(way, done.link);
      await page.getByText('Sealed, open with your key: 1.').first().waitFor();
      const choosing = page.waitForEvent('filechooser');
      await way.begin('button', 'Open sealed results with my key');
      await (await choosing).setFiles(keyOnDisk('no-key.json', '{"kind":"something else"}'));
      await page.getByText('That did not work. Pick your key file').first().waitFor();
      const again = page.waitForEvent('filechooser');
      await way.begin('button', 'Open sealed results with my key');
      await (await again).setFiles(keyOnDisk('called-off.json', made.keyFile));
      await page.getByRole('dialog', { name: 'Open your key' }).waitFor();
      await page.keyboard.press('Escape');
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      await waitForIdle(page);
      assert.match(await said(page), /Sealed, open with your key: 1\./);
    });
  });
});
