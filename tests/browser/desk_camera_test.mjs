// Results at the educator's desk by camera: Chromium's camera that is none shows a film of QR codes of real results.
// Counted once each, by keyboard too; the camera goes off at once, however it ends; nothing is stored or sent; what is
// said where there is no camera. Looks of the dialog go to .build/desk_camera.
import assert from 'node:assert/strict';
import { mkdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { after, before, describe, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { k_headers } from '../../ci/lib/headers.mjs';
import { closePage, k_sizes, launch, openApp, probe, waitForIdle } from './support/browser.mjs';
import { axe } from './support/checks.mjs';
import { addWindow, got, groupCodes, k_desk, openReading, unread } from './support/desk.mjs';
import { writeFilm } from './support/pictures.mjs';
import { serveSite } from './support/sites.mjs';
import { byKeys, byReader, byTouch } from './support/ways.mjs';

const k_out = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../.build/desk_camera');
const k_film = path.join(tmpdir(), `rehale-film-${process.pid}.y4m`);
const k_fake = ['--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream'];
// Keeps an eye on every camera that the page opens; window.hold: a promise that opening waits for.
const k_spy = `window.tracks = [];
  const real = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
  navigator.mediaDevices.getUserMedia = async (wish) => {
    window.wish = wish;
    await window.hold;
    const stream = await real(wish);
    window.tracks.push(...stream.getTracks());
    return stream;
  };`;
const app = {};
let codes;

before(async () => {
  codes = groupCodes(6);
  const changed = codes[1].slice(0, 20) + (codes[1][20] === 'A' ? 'B' : 'A') + codes[1].slice(21);
  writeFilm(k_film, [...[codes[0], changed, codes[2]].map((code) => `https://page.invalid/rehale/#r=${code}`), 'WIFI:S:guests;;\n']);
  app.site = await serveSite();
  app.browser = await launch([...k_fake, `--use-file-for-fake-video-capture=${k_film}`], { whole: true });
});
after(async () => {
  await app.browser?.close();
  await app.site?.close();
  rmSync(k_film, { force: true });
});

async function atDesk(wish, use, browser = app.browser, url = app.site.url) {
  const page = await openApp(browser, url + k_desk.query, { calm: true, unseen: true, before: k_spy, ...wish });
  page.setDefaultTimeout(60_000);
  try {
    await use(page);
  } finally {
    await closePage(page);
  }
}

const camera = (page) => page.getByRole('dialog', { name: 'Scan with the camera' });
const live = (page) => page.evaluate(() => window.tracks.filter((track) => track.readyState === 'live').length);

async function openCamera(page, way) {
  await openReading(page, way);
  if (way.name === 'keyboard') {
    for (let n = 0; n < 9 && await page.evaluate(() => document.activeElement.textContent) !== 'Scan with the camera'; n += 1) await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
  } else {
    await page.getByRole('button', { name: 'Scan with the camera' }).click();
  }
  await camera(page).waitFor();
}

const counted = (page, count) => camera(page).getByRole('status').filter({ hasText: `Codes read: ${count}.` }).waitFor();

async function ended(page) {
  await page.locator('#scan').waitFor({ state: 'detached' });
  assert.equal(await live(page), 0, 'the camera is off');
  assert.equal(await page.locator('video').count(), 0);
}

describe('a film of four codes, shown over and over', () => {
  for (const [label, wayOf, wish, stop] of [
    ['by keyboard, stopped by Escape', byKeys, {}, (page) => page.keyboard.press('Escape')],
    ['by keyboard, stopped by its button', byKeys, {}, (page) => page.keyboard.press('Enter')],  // it has the focus
    ['by finger on a phone', byTouch, { touch: true, size: k_sizes.phone }, (page) => camera(page).getByRole('button', { name: 'Stop' }).tap()],
  ]) {
    test(label, () => atDesk(wish, async (page) => {
      const sent = [];
      await openCamera(page, wayOf(page));
      await counted(page, 1);
      page.on('request', (request) => sent.push(request.url()));
      assert.equal(await live(page), 1);
      assert.deepEqual(await page.evaluate(() => [window.wish.audio, window.wish.video.facingMode]), [false, { ideal: 'environment' }]);
      await counted(page, 4);
      await page.waitForTimeout(8000);  // the film begins again
      assert.match(await camera(page).getByRole('status').innerText(), /^Codes read: 4\.$/);
      await stop(page);
      await ended(page);
      await got(page, 2);
      assert.equal((await probe(page)).screen, 'desk-read');
      const told = (await unread(byReader(page), 2)).map((line) => line.replace(/code \d/, 'code N')).sort();
      assert.match(told[0], /^Camera, code N: A letter was lost or changed\. Copy it again\. It starts with R1/);
      assert.equal(told[1], 'Camera, code N: This QR code is from something else. It starts with WIFI:S:guest');
      assert.equal(await page.evaluate(async () => JSON.stringify([{ ...localStorage }, { ...sessionStorage }, (await indexedDB.databases()).length, (await caches.keys()).length])),
        '[{},{},0,0]', 'nothing is stored');
      assert.deepEqual(sent.filter((url) => !url.startsWith(app.site.url) || /\?/.test(url)), [], 'nothing is sent');
      assert.deepEqual(page.complaints, []);
    }));
  }
});

describe('the camera goes off', () => {
  test('when nothing was read yet: the window is there again, with what was typed, and the focus on the button', () =>
    atDesk({ before: `window.hold = new Promise((go) => { window.go = go; }); ${k_spy}` }, async (page) => {
      await openReading(page, byKeys(page));
      await page.keyboard.type('typed before');
      await page.getByRole('button', { name: 'Scan with the camera' }).click();
      await camera(page).getByText('One moment.').waitFor();
      await page.waitForFunction(() => window.wish !== undefined);
      await page.keyboard.press('Escape');  // while the browser still asks
      await page.locator('#scan').waitFor({ state: 'detached' });
      await page.evaluate(() => window.go());
      await page.waitForFunction(() => window.tracks.length === 1 && window.tracks[0].readyState === 'ended');
      assert.equal(await page.evaluate(() => document.activeElement.textContent), 'Scan with the camera');
      assert.equal(await addWindow(page).getByRole('textbox').inputValue(), 'typed before');
      await page.keyboard.press('Escape');
      await addWindow(page).waitFor({ state: 'detached' });
      assert.equal((await probe(page)).screen, 'desk-read');
    }));

  test('when the page is hidden; what was read is kept', () => atDesk({}, async (page) => {
    await openCamera(page, byReader(page));
    await counted(page, 4);
    await page.evaluate(() => {
      Object.defineProperty(document, 'hidden', { value: true, configurable: true });
      document.dispatchEvent(new Event('visibilitychange'));
      delete document.hidden;
    });
    await ended(page);
    await got(page, 2);
  }));

  test('when it is unplugged, and that is told', () => atDesk({}, async (page) => {
    await openReading(page, byReader(page));
    await page.evaluate(() => { // before it sees a code
      Object.defineProperty(HTMLVideoElement.prototype, 'readyState', { value: 0 });
    });
    await page.getByRole('button', { name: 'Scan with the camera' }).click();
    await camera(page).getByText('Looking for a code.').waitFor();
    await page.evaluate(() => window.tracks[0].dispatchEvent(new Event('ended')));
    await ended(page);
    await addWindow(page).getByRole('status').filter({ hasText: 'The camera does not work now.' }).waitFor();
  }));
});

describe('without a camera it is said what to do instead, and the window stays', () => {
  const k_refused = /The camera is not allowed\. Allow it in your browser, or use photos or pasted codes\./;
  const tried = async (page, words) => {
    await openReading(page, byReader(page));
    await page.getByRole('button', { name: 'Scan with the camera' }).click();
    await addWindow(page).getByRole('status').filter({ hasText: words }).waitFor();
    await camera(page).waitFor({ state: 'detached' });
    await addWindow(page).getByRole('textbox').fill(codes[0]);
    await page.getByRole('button', { name: 'Read them' }).click();
    await got(page, 1);
  };

  test('refused by the person', async () => {
    const browser = await launch(k_fake.slice(0, 1), { whole: true });  // nobody presses "allow"
    await atDesk({}, (page) => tried(page, k_refused), browser);
    await browser.close();
  });

  test('forbidden by the server', () => atDesk({ route: (page) => page.route((url) => url.pathname === '/', async (route) => {
    const response = await route.fetch();
    await route.fulfill({ response, headers: { ...response.headers(), 'permissions-policy': 'camera=()' } });
  }) }, (page) => tried(page, k_refused)));

  test('none there', async () => {
    const browser = await launch(k_fake.slice(1), { whole: true });
    await atDesk({}, (page) => tried(page, /No camera was found\. Paste the codes, or pick photos of them\./), browser);
    await browser.close();
  });

  test('a page that is not secure', async () => {
    const browser = await launch([...k_fake, '--host-resolver-rules=MAP page.invalid 127.0.0.1'], { whole: true });
    await atDesk({ before: '' }, (page) => tried(page, /This page cannot use a camera here\. Paste the codes, or pick photos of them\./),
      browser, app.site.url.replace('127.0.0.1', 'page.invalid'));
    await browser.close();
  });

  test('in use elsewhere', () => atDesk({ before: 'navigator.mediaDevices.getUserMedia = async () => { throw new DOMException("", "NotReadableError"); };' },
    (page) => tried(page, /The camera does not work now\. Close what else uses it, or pick photos\./)));
});

test('servers allow the page itself the camera, and nothing else', async () => {
  const { headers } = await fetch(app.site.url);
  assert.equal(headers.get('permissions-policy'), k_headers['permissions-policy']);
  const allowed = headers.get('permissions-policy').split(', ').filter((each) => !each.endsWith('=()'));
  assert.deepEqual(allowed, ['camera=(self)']);
  assert.match(headers.get('content-security-policy'), /default-src/);
  assert.ok(!/blob:|data:|media-src/.test(headers.get('content-security-policy')));
});

describe('looked over', () => {
  mkdirSync(k_out, { recursive: true });
  for (const [name, size] of Object.entries(k_sizes)) {
    for (const dark of [false, true]) {
      test(`${name} ${dark ? 'dark' : 'light'}`, () => atDesk({ size, dark }, async (page) => {
        await openReading(page, byReader(page));
        const label = path.join(k_out, `${name}-${dark ? 'dark' : 'light'}`);
        const within = (box) => box.x >= 0 && box.y >= 0 && box.x + box.width <= size.width && box.y + box.height <= size.height;
        assert.ok(within(await addWindow(page).getByRole('button', { name: 'Cancel' }).boundingBox()), 'the window needs no scrolling');
        await page.screenshot({ path: `${label}-window.png` });
        await page.getByRole('button', { name: 'Scan with the camera' }).click();
        await counted(page, 1);
        await page.screenshot({ path: `${label}-camera.png` });
        assert.ok(within(await camera(page).getByRole('button', { name: 'Stop' }).boundingBox()));
        assert.ok((await page.locator('#scan video').boundingBox()).height >= 140);
        assert.deepEqual(await axe(page), []);
        await page.keyboard.press('Escape');
        await ended(page);
        await waitForIdle(page);
      }));
    }
  }
});
