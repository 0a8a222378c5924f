// The page as one file (ci/build --single), opened from a disk in Chromium: a whole check, its words in three
// languages, handing over, setting a practice, the desk; nothing is asked of anybody; nothing is complained about.
import assert from 'node:assert/strict';
import { existsSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { closePage, launch, openApp, probe } from './support/browser.mjs';
import { addWindow, got, groupCodes, openReading } from './support/desk.mjs';
import { answerOf, familyFromAssets, questionOnScreen } from './support/person.mjs';
import { photograph, writeFilm } from './support/pictures.mjs';
import { awaitScreen, takeCheck } from './support/walk.mjs';
import { byReader } from './support/ways.mjs';

const k_file = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../.build/rehale.html');
const k_url = pathToFileURL(k_file).href;
let browser;

before(async () => {
  assert.ok(existsSync(k_file), `${k_file} is missing: ci/build --single`);
  browser = await launch([], { whole: true });
});
after(() => browser?.close());

async function open(query) {
  const asked = [], isOwn = (url) => url.startsWith('blob:') || url === (k_url + query).replace(/#.*/, '');
  const route = (page) => page.on('request', (request) => { if (!isOwn(request.url())) asked.push(request.url()); });
  const page = await openApp(browser, k_url + query, { calm: true, unseen: true, route });
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
    assert.equal(title, words);
    assert.deepEqual(page.asked, []);
    assert.deepEqual(page.complaints, []);
    await closePage(page);
  }
});

test('the desk reads what is pasted and a picture, in a window with its own style', async () => {
  const codes = groupCodes(4);
  const photo = await photograph(browser, [`https://page.invalid/#r=${codes[0]}`]);
  const page = await open('?x=1#desk');
  await openReading(page, byReader(page));
  assert.equal(await addWindow(page).evaluate((window_) => getComputedStyle(window_).borderRadius), '16px');
  await addWindow(page).getByRole('textbox').fill(codes[1]);
  await addWindow(page).getByLabel('Or pick files').setInputFiles([{ name: 'photo.jpg', mimeType: 'image/jpeg', buffer: photo }]);
  await page.getByRole('button', { name: 'Read them' }).click();
  await got(page, 2);
  assert.deepEqual(page.asked, []);
  assert.deepEqual(page.complaints, []);
  await closePage(page);
});

test('the camera, from a disk: what it sees is read', async () => {
  const [code] = groupCodes(4);
  const film = writeFilm(path.join(tmpdir(), `rehale-single-${process.pid}.y4m`), [`https://page.invalid/#r=${code}`]);
  const own = await launch(['--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream', `--use-file-for-fake-video-capture=${film}`], { whole: true });
  const page = await openApp(own, `${k_url}?x=1#desk`, { calm: true });
  await openReading(page, byReader(page));
  await page.getByRole('button', { name: 'Scan with the camera' }).click();
  await page.getByText('Codes read: 1.').waitFor();
  await page.getByRole('button', { name: 'Stop' }).click();
  await got(page, 1);
  assert.deepEqual(page.complaints, []);
  await own.close();
  rmSync(film);
});
