// Results at the educator's desk from pictures of QR codes: the person's own screen and printed page, a table full of
// codes as a photo, and pictures that hold none or cannot be opened; without and with a reader of the browser's own.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { before, describe, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { k_sizes } from './support/browser.mjs';
import { addWindow, got, groupCodes, k_desk, openReading, unread } from './support/desk.mjs';
import { photograph } from './support/pictures.mjs';
import { appForTests } from './support/run.mjs';
import { awaitScreen } from './support/walk.mjs';
import { byReader } from './support/ways.mjs';

const app = appForTests();
const k_out = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../.build/desk_pictures');
const link = (code) => `https://page.invalid/rehale/#r=${code}`;
const picture = (name, buffer) => ({ name, mimeType: name.endsWith('png') ? 'image/png' : 'image/jpeg', buffer: Buffer.from(buffer) });
let codes;

before(() => { codes = groupCodes(20); });

// Picks files in the window and has them read; `count` results come of it.
async function pick(page, files, count) {
  await addWindow(page).getByLabel('Or pick files').setInputFiles(files);
  await addWindow(page).getByRole('button', { name: 'Read them' }).click();
  await got(page, count);
}

const partsFetched = (page) => page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name.match(/later\/(\w+)\.js$/)?.[1]).filter(Boolean));

// The screen and the page of paper that somebody hands over with this code.
async function handOver(code) {
  mkdirSync(k_out, { recursive: true });
  const made = {};
  await app.with({ query: `?seed=1#r=${code}`, calm: true, size: k_sizes.phone, density: 2, before: 'window.print = () => { window.printed = true; }' }, async (page) => {
    const way = byReader(page);
    await awaitScreen(page, 'result');
    await way.press('button', 'Show this to your pharmacist or nurse');
    await page.getByRole('img', { name: /^QR code/ }).waitFor();
    made.screen = await page.screenshot();
    await way.press('button', 'Print one page');
    await page.waitForFunction(() => window.printed);
    const pdf = path.join(k_out, 'page.pdf');
    writeFileSync(pdf, await page.pdf({ format: 'A4' }));
    execFileSync('pdftoppm', ['-r', '150', '-jpeg', '-singlefile', pdf, pdf.replace('.pdf', '')]);
    made.paper = readFileSync(pdf.replace('.pdf', '.jpg'));
  });
  return made;
}

describe('pictures of real results', () => {
  test('the screen of a phone and the printed page, beside a list of codes', async () => {
    const one = await handOver(codes[0]), other = await handOver(codes[1]);
    await app.with(k_desk, async (page) => {
      const way = byReader(page);
      await openReading(page, way);
      const before = await partsFetched(page);
      assert.ok(before.includes('desk') && !before.includes('scan') && !before.includes('qr_search'), `${before}`);
      await pick(page, [picture('screen.png', one.screen), { name: 'list.txt', mimeType: 'text/plain', buffer: Buffer.from(codes.slice(2, 5).join('\n')) },
        picture('paper.jpg', other.paper)], 5);
      assert.ok(!(await page.getByRole('main').innerText()).includes('Could not be read'));
      assert.ok((await partsFetched(page)).includes('qr_search'));
      assert.deepEqual(page.complaints, []);
    });
  });

  test('photos of six codes on a table, turned and leaning: each is read', async () => {
    const photos = [await photograph(app.browser, codes.slice(0, 6).map(link), { degrees: 6 }),
      await photograph(app.browser, codes.slice(6, 12).map(link), { width: 2400, height: 1800, px: 480, degrees: -22, lean: 20 })];
    await app.with(k_desk, async (page) => {
      await openReading(page, byReader(page));
      await pick(page, photos.map((bytes, n) => picture(`photo ${n}.jpg`, bytes)), 12);
      assert.deepEqual(page.complaints, []);
    });
  });
});

// The head of a PNG of that size; nothing behind it.
function headOfPng(width, height) {
  const head = Buffer.from('89504e470d0a1a0a0000000d4948445200000000000000000802000000', 'hex');
  head.writeUInt32BE(width, 16);
  head.writeUInt32BE(height, 20);
  return head;
}

test('what cannot be read is told with why, the rest is read; dropped pictures count as picked ones', async () => {
  const changed = codes[1].slice(0, 20) + (codes[1][20] === 'A' ? 'B' : 'A') + codes[1].slice(21);
  const [good, empty, mixed] = [await photograph(app.browser, [link(codes[0])]), await photograph(app.browser, []),
    await photograph(app.browser, ['WIFI:T:nopass;S:guests;;', link(changed), link(codes[2])], { type: 'png' })];
  await app.with(k_desk, async (page) => {
    const way = byReader(page);
    await openReading(page, way);
    await page.evaluate(async (bytes) => {
      const data = new DataTransfer();
      data.items.add(new File([Uint8Array.from(bytes)], 'dropped.jpg', { type: 'image/jpeg' }));
      document.getElementById('desk-window').dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }));
    }, [...good]);
    await pick(page, [picture('table.jpg', empty), picture('mixed.png', mixed), picture('huge.png', headOfPng(8000, 5001)),
      picture('torn.png', headOfPng(8000, 5000)), picture('fake.jpg', 'R1 is no picture'), picture('heavy.jpg', Buffer.alloc(30_000_001, 0xff)),
      { name: 'other.gif', mimeType: 'image/gif', buffer: Buffer.from('GIF89a') }], 2);
    const told = await unread(way, 8);
    assert.deepEqual(told.filter((line) => !line.startsWith('mixed.png')), [
      'table.jpg: No QR code was found. Take the photo closer, in good light.',
      'huge.png: This picture is too large. Use one below 30 MB and 40 megapixels.',
      'torn.png: This picture cannot be opened. Save it as PNG or JPEG.',
      'fake.jpg: This picture cannot be opened. Save it as PNG or JPEG.',
      'heavy.jpg: This picture is too large. Use one below 30 MB and 40 megapixels.',
      'other.gif: This picture cannot be opened. Save it as PNG or JPEG.']);
    const mixedTold = told.filter((line) => line.startsWith('mixed.png')).map((line) => line.replace(/code \d/, 'code N')).sort();
    assert.deepEqual(mixedTold, [`mixed.png, code N: A letter was lost or changed. Copy it again. It starts with ${changed.slice(0, 12)}`,
      'mixed.png, code N: This QR code is from something else. It starts with WIFI:T:nopas']);
    assert.deepEqual(page.complaints, []);
  });
});

// A reader of the browser's own, played: it sees what it is told to see.
const own = (detect) => `window.BarcodeDetector = class {
  static async getSupportedFormats() { return ['ean_13', 'qr_code']; }
  constructor({ formats }) { window.formats = formats; }
  async detect(picture) { window.seen = [picture.width, picture.height]; ${detect} }
};`;

describe('a browser with a reader of its own', () => {
  test('reads with that, and fetches no other', async () => {
    const photo = await photograph(app.browser, []);
    const found = codes.slice(0, 3).map((code) => ({ rawValue: link(code) }));
    await app.with({ ...k_desk, before: own(`return ${JSON.stringify([...found, { rawValue: '' }])};`) }, async (page) => {
      await openReading(page, byReader(page));
      await pick(page, [picture('photo.jpg', photo)], 3);
      assert.deepEqual(await page.evaluate(() => [window.formats, window.seen]), [['qr_code'], [1600, 1200]]);
      assert.ok(!(await partsFetched(page)).includes('qr_search'));
    });
  });

  for (const [label, detect] of [['that does not work', 'throw new Error("no service");'], ['that finds nothing', 'return [];']]) {
    test(`${label}: the other one is fetched`, async () => {
      const photo = await photograph(app.browser, [link(codes[3])]);
      await app.with({ ...k_desk, before: own(detect) }, async (page) => {
        await openReading(page, byReader(page));
        await pick(page, [picture('photo.jpg', photo)], 1);
        assert.ok(await page.evaluate(() => window.seen !== undefined));
      });
    });
  }
});

test('when the reader does not arrive, pictures say so and lists are read', async () => {
  const photo = await photograph(app.browser, [link(codes[0])]);
  for (const part of ['scan', 'qr_search']) {
    await app.with({ ...k_desk, route: (page) => page.route(`**/later/${part}.js`, (route) => route.abort()) }, async (page) => {
      const way = byReader(page);
      await openReading(page, way);
      await pick(page, [picture('photo.jpg', photo), { name: 'list.txt', mimeType: 'text/plain', buffer: Buffer.from(codes[1]) }], 1);
      assert.deepEqual(await unread(way, 1), ['photo.jpg: What reads QR codes did not arrive. Check that you are online.'], part);
    });
  }
});
