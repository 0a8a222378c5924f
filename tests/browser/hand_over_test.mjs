// A result handed over: the QR code of the real screen through two independent readers (Debian's zbar-tools, npm
// jsqr), the link in another browser context, copy, file, one printed page, links that are not whole, by keyboard.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { before, describe, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { k_sizes, probe, waitForIdle } from './support/browser.mjs';
import { answerOf, familyFromAssets, questionOnScreen } from './support/person.mjs';
import { underPolicy } from './support/policy.mjs';
import { readByZbar } from './support/qr.mjs';
import { appForTests } from './support/run.mjs';
import { lookOver } from './support/screen_checks.mjs';
import { awaitScreen, openFamily, takeCheck } from './support/walk.mjs';
import { byKeys, byReader } from './support/ways.mjs';

const k_jsqr = readFileSync(createRequire(import.meta.url).resolve('jsqr'), 'utf8');
const app = appForTests();
const k_out = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../.build/hand_over');
const k_ask = 'Show this to your pharmacist or nurse';
const k_person = { lacks: ['hold-upright', 'breathe-then-press'], holds: 'sucks-hard' };
const k_clipboard = { permissions: ['clipboard-read', 'clipboard-write'] };
const k_looks = {
  'phone light': { size: k_sizes.phone }, 'phone dark': { size: k_sizes.phone, dark: true, density: 2 },
  'tablet dark': { size: k_sizes.tablet, dark: true }, 'screen light': { size: k_sizes.screen },
  'screen dark': { size: k_sizes.screen, dark: true },
};
let made;  // {link, advice} of one whole check, taken on the page

const cards = (page) => page.getByRole('main').getByRole('heading', { level: 2 }).allInnerTexts();

async function toHandOver(page, way = byReader(page)) {
  await awaitScreen(page, 'result');
  await way.press('button', k_ask);
  await awaitScreen(page, 'hand-over');
  await page.getByRole('img', { name: /^QR code/ }).waitFor();
  await waitForIdle(page);
}

async function copied(page) {
  await byReader(page).press('button', 'Copy the link');
  await page.waitForFunction(() => document.getElementById('polite').innerText.includes('Copied'));
  return page.evaluate(() => navigator.clipboard.readText());
}

const hash = (link = made.link) => link.slice(link.indexOf('#'));
const withLink = (wish, use) => app.with({ query: `?seed=1${hash()}`, calm: true, ...wish }, use);

// The pixels of the canvas as they are, as a PNG file and for jsqr.
async function photograph(page, name, clip) {
  mkdirSync(k_out, { recursive: true });
  const file = path.join(k_out, `${name.replaceAll(' ', '-')}.png`);
  await page.screenshot({ path: file, clip });
  return file;
}

// It reads in the page: the pixels of a picture are too many to be sent about.
async function readByJsqr(page, file) {
  if (!await page.evaluate(() => 'jsQR' in window)) await page.evaluate(k_jsqr);
  return page.evaluate(async (base64) => {
    const image = await createImageBitmap(new Blob([Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))]));
    const context = new OffscreenCanvas(image.width, image.height).getContext('2d');
    context.drawImage(image, 0, 0);
    const { data, width, height } = context.getImageData(0, 0, image.width, image.height);
    return window.jsQR(data, width, height)?.data;
  }, readFileSync(file).toString('base64'));
}

before(async () => {
  while (app.browser === undefined) await new Promise((soon) => { setTimeout(soon, 20); });  // all hooks begin at once
  const family = familyFromAssets('spray');
  await app.with({ query: '?seed=5', calm: true, context: k_clipboard }, async (page) => {
    const way = byReader(page);
    await openFamily(way, 'spray');
    await takeCheck(way, (question) => answerOf(family, questionOnScreen(family, question), k_person));
    const advice = await cards(page);
    assert.ok(advice.length > 0);
    await toHandOver(page, way);
    made = { link: await copied(page), advice };
    mkdirSync(path.dirname(k_out), { recursive: true });
    writeFileSync(path.join(path.dirname(k_out), 'code.txt'), hash().slice(3));
    assert.deepEqual(page.complaints, []);
  });
});

test('a link is short, and starts with the address of the page', () => {
  assert.ok(made.link.startsWith(`${app.site.url}#r=R1`) || made.link.startsWith(`${app.site.url}/#r=R1`), made.link);
  assert.ok(made.link.length <= 400, `${made.link.length} letters`);  // issue 5
});

describe('the QR code on the screen', { concurrency: 2 }, () => {
  for (const [label, look] of Object.entries(k_looks)) {
    test(`${label}: two readers read the link`, () => withLink(look, async (page) => {
      await toHandOver(page);
      const box = await page.getByRole('img').boundingBox();
      assert.ok(box.y + box.height < look.size.height - 90, 'whole above the button, without scrolling');
      const file = await photograph(page, label, box);
      assert.deepEqual(readByZbar(file), [made.link]);
      assert.equal(await readByJsqr(page, file), made.link);
      if (look.density === undefined) assert.deepEqual(await lookOver(page, {}), []);  // it measures at density 1
      assert.deepEqual(page.complaints, []);
    }));
  }
});

test('the link in another context shows the same advice, as handed over, and leaves the address', () =>
  withLink({}, async (page) => {
    await awaitScreen(page, 'result');
    assert.deepEqual(await cards(page), made.advice);
    assert.match(await page.getByRole('main').innerText(), /handed over: .+, \d+ [A-Z][a-z]+ 20\d\d\. A person told it/);
    assert.equal(await page.evaluate(() => location.hash), '');
    assert.deepEqual(await lookOver(page, {}), []);
    await byReader(page).press('button', 'Start a new check');
    await awaitScreen(page, 'choose-device');
  }));

test('by keyboard alone: copy, code to read out, and back', () => withLink({ context: k_clipboard }, async (page) => {
  const way = byKeys(page);
  await toHandOver(page, way);
  await way.press('button', 'Copy the link');
  await page.waitForFunction(() => document.getElementById('polite').innerText.includes('Copied'));
  assert.equal(await page.evaluate(() => navigator.clipboard.readText()), made.link);
  await way.press('button', 'Code to read out');
  const words = await page.getByRole('paragraph').allInnerTexts();
  const code = hash().slice(3);
  assert.ok(words.includes(code.match(/.{1,4}/g).join(' ')), words.join('\n'));
  await way.press('button', 'Back to your result');
  await awaitScreen(page, 'result');
}));

test('the file is the run as exportRun gives it', () => withLink({}, async (page) => {
  await toHandOver(page);
  const waiting = page.waitForEvent('download');
  await byReader(page).press('button', 'Save as a file');
  const download = await waiting;
  assert.equal(download.suggestedFilename(), 'rehale-result.json');
  const text = readFileSync(await download.path(), 'utf8');
  assert.equal(text, await page.evaluate(() => window.rehale.exportRun()));
  assert.equal(JSON.parse(text).kind, 'rehale-run');
}));

// window.print() does nothing here: the page stays until it is told that printing is over.
const k_no_print = 'window.print = () => { window.printed = (window.printed ?? 0) + 1; }';

// Headings whose rule runs into the code and the light around it (ISO/IEC 18004: 4 modules), as wide as A4 between margins.
async function rulesThroughTheCode(page) {
  await page.setViewportSize({ width: 703, height: 1000 });
  await page.emulateMedia({ media: 'print' });
  const code = await page.locator('#sheet .qr').boundingBox();
  const rules = await page.locator('#sheet h2').evaluateAll((all) => all.map((heading) => {
    const { right, top, bottom } = heading.getBoundingClientRect();
    return { name: heading.textContent, right, top, bottom };
  }));
  await page.emulateMedia({ media: null });
  const beside = rules.filter(({ top, bottom }) => top < code.y + code.height && bottom > code.y);
  assert.ok(beside.length > 0, 'no heading stands beside the code');
  return beside.filter(({ right }) => right > code.x);
}

describe('one page of paper', () => {
  for (const format of ['A4', 'Letter']) {
    test(`${format}, under the strictest content policy`, () => withLink({ before: k_no_print, route: underPolicy }, async (page) => {
      await toHandOver(page);
      assert.equal(await page.locator('#sheet').count(), 0);
      await byReader(page).press('button', 'Print one page');
      await page.waitForFunction(() => window.printed === 1);
      const words = await page.locator('#sheet').evaluate((sheet) => sheet.textContent);
      for (const name of made.advice.slice(0, 2)) assert.ok(words.includes(name), name);
      const smallest_pt = await page.locator('#sheet *').evaluateAll((all) =>
        Math.min(...all.map((element) => parseFloat(getComputedStyle(element).fontSize))) * 72 / 96);
      assert.ok(smallest_pt >= 10.99 && smallest_pt < 20, `${smallest_pt} pt`);  // 11 pt (users.md 7)
      assert.deepEqual(await rulesThroughTheCode(page), []);
      mkdirSync(k_out, { recursive: true });
      const file = path.join(k_out, `${format}.pdf`);
      writeFileSync(file, await page.pdf({ format, preferCSSPageSize: false }));
      assert.match(execFileSync('pdfinfo', [file], { encoding: 'utf8' }), /Pages: +1\n/);
      execFileSync('pdftoppm', ['-r', '150', '-png', '-singlefile', file, file.replace('.pdf', '-print')]);
      assert.deepEqual(readByZbar(file.replace('.pdf', '-print.png')), [made.link]);
      assert.match(execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' }), /not observed/);
      assert.equal(await page.locator('#sheet').count(), 0);  // Chromium's pdf() tells the page that printing is over
      assert.deepEqual(page.complaints, []);
    }));
  }
});

// 20 ways in which a link breaks on its way.
function broken(link) {
  const code = hash(link).slice(3);
  const changed = (at) => code.slice(0, at) + (code[at] === 'A' ? 'B' : 'A') + code.slice(at + 1);
  return [
    code.slice(0, -1), code.slice(0, -4), code.slice(0, 20), code.slice(1), code[0], 'R1', `${code}A`, `${code}AAAA`,
    code + code, code.toLowerCase(), code.toUpperCase(), changed(3), changed(code.length >> 1), changed(code.length - 1),
    `R9${code.slice(2)}`, `A${code.slice(1)}`, `${code.slice(0, 30)}%20${code.slice(30)}`, `${code}&x=1`,
    'A'.repeat(4096), 'R1'.repeat(50_000),
  ];
}

test('20 broken links: a clear message and a way out, nothing stuck', async () => {
  for (const code of broken(made.link)) {
    await app.with({ query: `#r=${code}`, calm: true }, async (page) => {
      const hint = code.slice(0, 50);
      assert.equal((await probe(page)).screen, 'trouble', hint);
      assert.match(await page.getByRole('heading', { level: 1 }).innerText(), /^This link (is|has) /, hint);
      assert.equal(await page.evaluate(() => location.hash), '', hint);
      assert.deepEqual(page.complaints, [], hint);
      await byReader(page).press('button', 'Go on');
      await awaitScreen(page, 'choose-device');
    });
  }
});
