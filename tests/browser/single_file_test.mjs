// The page as one file (ci/build --single), opened from a disk in Chromium: a whole check, its words in three
// languages, handing over, setting a practice, the desk; nothing is asked of anybody; nothing is complained about.
import assert from 'node:assert/strict';
import { existsSync, statSync } from 'node:fs';
import path from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { closePage, launch, openApp, probe } from './support/browser.mjs';
import { answerOf, familyFromAssets, questionOnScreen } from './support/person.mjs';
import { awaitScreen, takeCheck } from './support/walk.mjs';
import { byReader } from './support/ways.mjs';

const k_file = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../.build/rehale.html');
const k_url = pathToFileURL(k_file).href;
let browser;

before(async () => {
  assert.ok(existsSync(k_file), `${k_file} is missing: ci/build --single`);
  browser = await launch();
});
after(() => browser?.close());

async function open(query) {
  const asked = [];
  const page = await openApp(browser, k_url + query, { calm: true });
  page.on('request', (request) => { if (!request.url().startsWith('blob:')) asked.push(request.url()); });
  page.asked = asked;
  page.setDefaultTimeout(60_000);
  return page;
}

test('at most 1.5 MB', () => assert.ok(statSync(k_file).size <= 1_500_000, `${statSync(k_file).size}`));

for (const family of ['spray', 'powder-cover']) {
  test(`a whole check of ${family}, handed over`, async () => {
    const page = await open('?seed=3');
    const way = byReader(page);
    const content = familyFromAssets(family);
    await awaitScreen(page, 'choose-device');
    await way.press('button', content.name);
    await awaitScreen(page, 'ready');
    await way.press('button', 'Start');
    await takeCheck(way, (read) => answerOf(content, questionOnScreen(content, read), { lacks: ['hold-breath'], holds: [] }));
    assert.equal((await probe(page)).screen, 'result');
    assert.match(await page.getByRole('main').innerText(), /Nobody watched you or measured your breath/);
    await way.press('button', 'Show this to your pharmacist or nurse');
    await page.getByRole('img', { name: /^QR code/ }).waitFor();
    await way.press('button', 'Help and about');
    await page.getByText('This page is one file. It needs no network.').first().waitFor();
    assert.deepEqual(page.asked, []);
    assert.deepEqual(page.complaints, []);
    await closePage(page);
  });
}

test('other languages, setting a practice, the desk', async () => {
  for (const [query, words] of [['?lang=es', '¿Qué inhalador tiene usted?'], ['?lang=pt', 'Qual é o seu inalador?'], ['?x=1#set', 'Set a practice'], ['?x=1#desk', "The educator's desk"]]) {
    const page = await open(query);
    assert.equal((await probe(page)).problem, '', query);
    const title = await page.getByRole('heading', { level: 1 }).innerText();
    if (words) assert.equal(title, words);
    assert.deepEqual(page.complaints, []);
    await closePage(page);
  }
});
