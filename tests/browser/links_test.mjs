// Links that are not whole, not ours, or not what they seem (tests/reference/links), one after another in one tab: each
// time the page says what is the matter or, where the link is none of ours, takes no notice; nothing that was kept or is
// going on is lost, and the page is ready for the next. Also on a shared device, which stays one whatever is opened on it.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { describe, test } from 'node:test';
import { probe, waitForIdle } from './support/browser.mjs';
import { atStart, leave, visit } from './support/kiosk.mjs';
import { appForTests } from './support/run.mjs';
import { awaitScreen, openFamily } from './support/walk.mjs';
import { byReader } from './support/ways.mjs';

const app = appForTests();
const read = (file) => JSON.parse(readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8'));
const k_links = read('tests/reference/links/malformed.json');
const k_told = k_links.filter(({ says }) => says), k_ignored = k_links.filter(({ says }) => !says);
const k_words = read('assets/text/en.json');
const wordsOf = (says) => says.split('/').reduce((at, key) => at[key], k_words);

// As the page keeps them for a person who agreed (web/js/kept.js, keep.js).
const keepSomething = (page) => page.evaluate(async () => {
  localStorage.setItem('rehale.settings', '1 text=125 hand=left');
  const request = indexedDB.open('rehale', 1);
  request.onupgradeneeded = () => request.result.createObjectStore('kept');
  await new Promise((done) => { request.onsuccess = done; });
  const writing = request.result.transaction('kept', 'readwrite');
  writing.objectStore('kept').put('what was kept', 'all');
  await new Promise((done) => { writing.oncomplete = done; });
  request.result.close();
});

const kept = (page) => page.evaluate(async () => {
  const request = indexedDB.open('rehale', 1);
  await new Promise((done) => { request.onsuccess = done; });
  const reading = request.result.transaction('kept').objectStore('kept').get('all');
  await new Promise((done) => { reading.onsuccess = done; });
  request.result.close();
  return { settings: { ...localStorage }, results: reading.result, cookies: document.cookie, hit: window.hit };
});

// Opened in this tab, as a press on a link in a message does. Resolves to what then stands there.
async function told(page, { fragment }) {
  await page.evaluate((to) => { window.is_old = true; location.hash = to; }, fragment);
  await page.waitForFunction(() => !window.is_old && window.rehale?.started
    && (window.rehale.problem || document.querySelector('[data-id="way-out"]')), null, { polling: 10, timeout: 20_000 });
  return page.evaluate(() => ({
    title: document.querySelector('#mirror h1')?.textContent, lead: document.querySelector('[data-id="lead"]')?.textContent,
    out: document.querySelector('[data-id="way-out"]')?.textContent, hash: location.hash, hit: window.hit,
    problem: window.rehale.problem, text: window.rehale.exportRun(),
  }));
}

// In the page: opens each by the address, and gives for each whether anything came of it.
const openAll = (page, links) => page.evaluate(async (fragments) => {
  const opened = () => new Promise((done) => {  // the page hears of it before us; some are the address that stands there
    addEventListener('hashchange', () => setTimeout(done), { once: true });
    setTimeout(done, 50);
  });
  const now = () => ({ screen: window.rehale.probe().screen, title: document.title, run: window.rehale.exportRun(), problem: window.rehale.problem, hit: window.hit });
  window.is_old = true;
  const first = JSON.stringify(now());
  const came = [];
  for (const fragment of fragments) {
    location.hash = fragment;
    await opened();
    if (JSON.stringify(now()) !== first) came.push(fragment.slice(0, 100));
  }
  await new Promise((done) => { setTimeout(done, 200); });  // what came later
  if (JSON.stringify(now()) !== first) came.push('some time after');
  return { came, hash: location.hash, run: window.rehale.exportRun() };
}, links.map(({ fragment }) => fragment));

describe('one after another in one tab', { concurrency: 3 }, () => {
  test(`${k_told.length} links, each told by what is the matter with it, and with a way out`, () => app.with({ calm: true }, async (page) => {
    await keepSomething(page);
    const before = await kept(page);
    for (const link of k_told) {
      const { title, lead, ...rest } = await told(page, link).catch((error) => { throw new Error(`${link.why}: ${link.fragment.slice(0, 200)}`, { cause: error }); });
      assert.deepEqual({ title, lead }, wordsOf(link.says), `${link.why}: ${link.fragment.slice(0, 200)}`);
      assert.deepEqual(rest, { out: 'Go on', hash: '', hit: undefined, problem: '', text: '' }, link.why);
    }
    assert.deepEqual(await kept(page), before);
    const way = byReader(page);
    await waitForIdle(page);
    await way.press('button', 'Go on');
    await openFamily(way, 'spray');
    await awaitScreen(page, 'question');
    assert.deepEqual(page.complaints, []);
  }));

  test(`${k_ignored.length} that are no links of ours change nothing, and none of all disturbs a check that is going on`, () => app.with({ calm: true, query: '?seed=5' }, async (page) => {
    const way = byReader(page);
    await awaitScreen(page, 'choose-device');
    assert.deepEqual((await openAll(page, k_ignored)).came, []);
    for (const { fragment } of k_ignored.filter((_, n) => n % 9 === 0)) {  // opened from afar: the ordinary start
      await page.evaluate((to) => { location.hash = to; }, fragment);
      await page.reload();
      await awaitScreen(page, 'choose-device');
    }
    await page.goto(`${app.site.url}?seed=5&%23kiosk=1&%23desk=1&%23set=1`);  // names that only the page itself may tell
    await openFamily(way, 'spray');
    await awaitScreen(page, 'question');
    await way.press('button', "I'm not sure");
    await awaitScreen(page, 'question');
    const before = await page.evaluate(() => window.rehale.exportRun());
    const { came, run } = await openAll(page, k_links);
    assert.deepEqual(came, []);
    assert.equal(run, before);
    await way.press('button', "I'm not sure");
    assert.equal(JSON.parse(await page.evaluate(() => window.rehale.exportRun())).events.filter(({ what }) => what === 'answered').length, 2);
    assert.deepEqual(page.complaints, []);
  }));

  test('a shared device stays one, at its start and while somebody is there', () => app.with({ calm: true, query: '#kiosk' }, async (page) => {
    await atStart(page);
    const past = await openAll(page, k_links);
    assert.deepEqual(past, { came: [], hash: '#kiosk', run: '' });
    await visit(page, 'Soft mist inhaler', 0);
    const { came, hash } = await openAll(page, k_links);
    assert.deepEqual({ came, hash }, { came: [], hash: '#kiosk' });
    await leave(page);
    await page.reload();
    await atStart(page);
    assert.equal((await probe(page)).problem, '');
    assert.deepEqual(page.complaints, []);
  }));
});
