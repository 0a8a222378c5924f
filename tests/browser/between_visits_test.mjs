// Between two visits: the counter and its days, the calendar file through an iCalendar parser, a link and a file that
// bring the numbers back in another browser context, and results kept on the device; by keyboard and by finger.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { describe, test } from 'node:test';
import ICAL from 'ical.js';
import { k_sizes, waitForIdle } from './support/browser.mjs';
import { find, rest } from './support/hands.mjs';
import { answerOf, familyFromAssets, questionOnScreen } from './support/person.mjs';
import { underPolicy } from './support/policy.mjs';
import { appForTests } from './support/run.mjs';
import { lookOver } from './support/screen_checks.mjs';
import { awaitScreen, takeCheck } from './support/walk.mjs';
import { byKeys, byReader, byTouch } from './support/ways.mjs';

const app = appForTests();
const k_clipboard = { permissions: ['clipboard-read', 'clipboard-write'] };
const k_looks = {
  'phone light': { size: k_sizes.phone }, 'phone dark': { size: k_sizes.phone, dark: true },
  'tablet dark': { size: k_sizes.tablet, dark: true }, 'screen light': { size: k_sizes.screen },
};
const words = (page) => page.getByRole('main').innerText();

// The page's own calendar, counted on by node's.
const inDays = (days) => new Date(Date.now() + days * 86_400_000).toLocaleDateString('en-GB', { dateStyle: 'long' });
const isoInDays = (days) => new Date(Date.now() + days * 86_400_000).toLocaleDateString('sv-SE');  // 2026-11-25

async function toCare(way, device = 'Spray inhaler') {
  await awaitScreen(way.page, 'choose-device');
  await way.press('button', device);
  await awaitScreen(way.page, 'ready');
  await way.press('button', 'Counter and care');
  await awaitScreen(way.page, 'care');
}

// The number keys, as a person presses them on the number that has the focus.
async function typeNumber(page, digits) {
  await page.keyboard.press('Control+A');
  await page.keyboard.type(String(digits));
  await page.keyboard.press('Enter');
  await rest(page);
}

async function download(page, press) {
  const waiting = page.waitForEvent('download');
  await press();
  const file = await waiting;
  return { name: file.suggestedFilename(), text: readFileSync(await file.path(), 'utf8') };
}

async function said(page, text) {
  await page.waitForFunction((wanted) => document.getElementById('mirror').innerText.includes(wanted), text);
}

// 57 puffs, 2 a day: 28 days left, by hand.
async function tellByKeys(page, way) {
  await toCare(way);
  for (let n = 0; n < 12 && await find(page, 'spinbutton', 'What the counter shows').evaluate((e) => e !== document.activeElement); n += 1) {
    await page.keyboard.press('Tab');
  }
  await typeNumber(page, 57);
  await way.stepNumber('How often a day', 1);
  await way.press('button', 'Show my dates');
  await awaitScreen(page, 'care-plan');
}

test('by keyboard: number keys, days, calendar, link and file', () => app.with({ query: '?seed=5', calm: true, context: k_clipboard }, async (page) => {
  const way = byKeys(page);
  await tellByKeys(page, way);
  assert.match(await words(page), new RegExp(`Use a new one from ${inDays(28)}`));
  assert.match(await words(page), new RegExp(`Ask for the new one on ${inDays(21)}`));
  assert.match(await words(page), /At 2 puffs a day/);
  assert.deepEqual(await lookOver(page, { rest_ms: 300 }), []);
  const { name, text } = await download(page, () => way.press('button', 'Save these days for my calendar'));
  assert.equal(name, 'rehale.ics');
  const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((part) => new ICAL.Event(part));
  assert.deepEqual(events.map(({ summary, startDate }) => [summary, startDate.toString()]),
    [['Ask for a new inhaler', isoInDays(21)], ['Clean your inhaler', isoInDays(0)]]);
  const cleaning = events[1].iterator();
  assert.deepEqual([cleaning.next(), cleaning.next()].map(String), [isoInDays(0), isoInDays(7)]);
  await way.press('button', 'Copy a link with these numbers');
  await said(page, 'Copied.');
  const link = await page.evaluate(() => navigator.clipboard.readText());
  assert.match(link, /#c=C1/);
  assert.ok(link.length <= 400);
  const file = await download(page, () => way.press('button', 'Save these numbers as a file'));
  assert.equal(file.name, 'rehale-inhaler.json');
  assert.equal(JSON.parse(file.text).care, link.slice(link.indexOf('#c=') + 3));
  assert.deepEqual(page.complaints, []);
  await comesBackByLink(link);
  await comesBackByFile(file.text);
}));

const comesBackByLink = (link) => app.with({ query: link.slice(link.indexOf('#')) }, async (page) => {
  await awaitScreen(page, 'care-plan');
  assert.match(await words(page), new RegExp(`Use a new one from ${inDays(28)}`));
  assert.equal(await page.evaluate(() => location.hash), '');
  assert.deepEqual(page.complaints, []);
});

const comesBackByFile = (text) => app.with({}, async (page) => {
  const way = byReader(page);
  await toCare(way);
  const choosing = page.waitForEvent('filechooser');
  await way.begin('button', 'Open my saved file');
  await (await choosing).setFiles({ name: 'mine.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await awaitScreen(page, 'care-plan');
  assert.match(await words(page), new RegExp(`Use a new one from ${inDays(28)}`));
});

test('by finger on a phone: a tap on the number takes the number keys', () =>
  app.with({ query: '?seed=5', touch: true, calm: true, size: k_sizes.phone }, async (page) => {
    const way = byTouch(page);
    await toCare(way, 'Powder inhaler with a lever');
    await way.press('spinbutton', 'What the counter shows');
    assert.equal(await page.evaluate(() => document.activeElement.inputMode), 'decimal');  // a phone shows number keys
    await typeNumber(page, 40);
    await way.stepNumber('How often a day', 1);
    await way.press('button', 'I know the day I opened it');
    await way.press('button', 'Show my dates');
    await awaitScreen(page, 'care-plan');
    assert.match(await words(page), new RegExp(`Use a new one from ${inDays(20)}`));
    assert.match(await words(page), /Wipe the mouthpiece with a dry tissue/);
    await way.press('button', 'Done');
    await awaitScreen(page, 'ready');
    assert.deepEqual(page.complaints, []);
  }));

describe('a spray with all that can be told of it', { concurrency: 2 }, () => {
  for (const [label, look] of Object.entries(k_looks)) {
    test(label, () => app.with({ query: '?seed=5', calm: true, ...look }, async (page) => {
      const way = byReader(page);
      await toCare(way);
      assert.deepEqual(await lookOver(page, {}), []);
      for (const name of ['I know the day I opened it', 'I see a last date on it', 'I know when I last cleaned it',
        'My leaflet has other numbers']) await way.press('button', name);
      await way.press('radio', 'Only when I need it');
      await way.press('radio', 'I know the day');
      assert.deepEqual(await lookOver(page, { rest_ms: 300 }), []);
      await way.press('button', 'Show my dates');
      await awaitScreen(page, 'care-plan');
      await way.press('button', 'Where these numbers come from');
      await way.press('button', 'Can I float, weigh or shake it?');
      assert.match(await words(page), /Not in water: cans float in many ways/);
      assert.deepEqual(await lookOver(page, { rest_ms: 300 }), []);
      assert.deepEqual(page.complaints, []);
    }));
  }
});

describe('links that are not whole', { concurrency: 2 }, () => {
  const good = 'C1kGVzcHJheRlRLhg5AQH2APb29vb29vb29j-9rSM';  // tests/fixtures/codes
  for (const [code, title] of [
    [good.slice(0, -1), 'This link is not whole'], [`${good}A`, 'This link is not whole'], [good.toLowerCase(), 'This link is not whole'],
    [`C9${good.slice(2)}`, 'This link is newer than this page'], ['C'.repeat(9000), 'This link is not whole'], ['%00%ff', 'This link is not whole'],
  ]) {
    test(code.slice(0, 44), () => app.with({ query: `#c=${code}` }, async (page) => {
      await awaitScreen(page, 'trouble');
      assert.equal(await page.locator('#mirror h1').innerText(), title);
      await byReader(page).press('button', 'Go on');
      await awaitScreen(page, 'choose-device');
      assert.deepEqual(page.complaints, []);
    }));
  }
});

const k_family = familyFromAssets('spray');

async function check(page, person) {
  const way = byReader(page);
  await awaitScreen(page, 'choose-device');
  await way.press('button', 'Spray inhaler');
  await awaitScreen(page, 'ready');
  await way.press('button', 'Start');
  await takeCheck(way, (question) => answerOf(k_family, questionOnScreen(k_family, question), person));
  await way.press('button', 'When to check again');
  await awaitScreen(page, 'again');
  return way;
}

const k_lacks = { lacks: ['hold-upright', 'breathe-then-press'], holds: [] };
const stores = (page) => page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name));

describe('when to check again, and results over time', { concurrency: 2 }, () => {
  test('at three sizes, light and dark', () => app.with({ query: '?seed=5', calm: true }, async (page) => {
    await check(page, k_lacks);
    assert.match(await words(page), new RegExp(`Check again on ${inDays(7)}`));
    for (const [label, { size, dark }] of Object.entries(k_looks)) {
      await page.setViewportSize(size);
      await page.emulateMedia({ colorScheme: dark ? 'dark' : 'light' });
      await page.waitForTimeout(50);  // the browser tells of it in its own time
      await waitForIdle(page);
      assert.deepEqual(await lookOver(page, {}), [], label);
    }
    assert.deepEqual(page.complaints, []);
  }));

  test('nothing is there before a yes; then what changed is shown; then nothing again', () =>
    app.with({ query: '?seed=5', calm: true, route: underPolicy }, async (page) => {
      let way = await check(page, k_lacks);
      await find(page, 'button', 'Keep them on this device').waitFor();
      assert.deepEqual(await stores(page), []);
      await way.press('button', 'Keep them on this device');
      await said(page, 'Kept on this device.');
      assert.deepEqual(await stores(page), ['rehale']);
      await page.goto(`${app.site.url}?seed=6`);
      await waitForIdle(page);
      way = await check(page, { lacks: [], holds: [] });
      await said(page, `Since ${inDays(0)}`);
      const list = await words(page);
      assert.match(list, /You have this now: Can on top/);
      assert.match(list, /Kept here: 2/);
      const { text } = await download(page, () => way.press('button', 'Save it for my calendar'));
      const [event] = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((part) => new ICAL.Event(part));
      assert.equal(event.uid, 'check-spray@rehale');
      assert.match(list, new RegExp(`Check again on ${new Date(event.startDate.toJSDate()).toLocaleDateString('en-GB', { dateStyle: 'long' })}`));
      await way.press('button', 'Delete all that is kept here');
      await said(page, 'All of it is gone.');
      assert.deepEqual(await stores(page), []);
      assert.deepEqual(page.complaints, []);
    }));
});

// What browsers do: refuse to open, take nothing more, hold what is not ours.
const k_storage = {
  'that throws': { before: "Object.defineProperty(window, 'indexedDB', { get() { throw new DOMException('no', 'SecurityError'); } })",
    line: 'This browser does not let us look at what is kept.' },
  'that is full': { before: "IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError'); }",
    press: 'Keep them on this device', line: 'This browser did not keep it.' },
  'that never answers': { before: 'IDBFactory.prototype.open = () => ({})', line: 'This browser does not let us look at what is kept.' },
};

const putInStore = (page, value) => page.evaluate((rubbish) => new Promise((done) => {
  const request = indexedDB.open('rehale', 1);
  request.onupgradeneeded = () => request.result.createObjectStore('kept').put(rubbish, 'all');
  request.onsuccess = () => { request.result.close(); done(); };
}), value);

describe('storage', { concurrency: 3 }, () => {
  for (const [label, { before, press, line }] of Object.entries(k_storage)) {
    test(label, () => app.with({ query: '?seed=5', calm: true, before }, async (page) => {
      const way = await check(page, k_lacks);
      if (press) {
        await find(page, 'button', press).waitFor();
        await way.press('button', press);
      }
      await said(page, line);
      await way.press('button', 'Back to your result');
      await awaitScreen(page, 'result');
      assert.deepEqual(page.complaints, []);
    }));
  }

  for (const [label, value] of Object.entries({ 'a number': 7, 'a text': 'hello', 'far too much': 'x'.repeat(300_000) })) {
    test(`that holds ${label}: told, and gone in one tap`, () => app.with({ query: '?seed=5', calm: true }, async (page) => {
      await putInStore(page, value);
      const way = await check(page, k_lacks);
      await said(page, 'What is kept here cannot be read.');
      await way.press('button', 'Delete all that is kept here');
      await said(page, 'All of it is gone.');
      assert.deepEqual(page.complaints, []);
    }));
  }
});
