// Without a network: reloads with the server gone, a whole check among them; versions that never mix; what was kept
// broken, half or not at all; and that nothing is ever asked of anybody else.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { createServer } from 'node:http';
import { cpSync, mkdtempSync, readFileSync, readdirSync, renameSync, rmSync, rmdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { setName, setOf } from '../../ci/lib/named_set.mjs';
import { serve } from '../../ci/lib/serve.mjs';
import { closePage, launch, openPage, probe, waitForIdle } from './support/browser.mjs';
import { isKept, until } from './support/kept.mjs';
import { answerOf, familyFromAssets, questionOnScreen } from './support/person.mjs';
import { awaitScreen, takeCheck } from './support/walk.mjs';
import { byReader } from './support/ways.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const k_site = process.env.REHALE_SITE ?? path.join(root, '.build/site');
const k_reloads = Number(process.env.REHALE_RELOADS ?? 20);
const k_keeps = { keeps: true, calm: true, unseen: true };
const servers = [];
let browser, folder;

before(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'rehale-offline-'));
  browser = await launch([], { whole: true });
});
after(async () => {
  await browser?.close();
  await Promise.all(servers.map(({ close }) => close()));
  rmSync(folder, { recursive: true });
});

// A copy of the site, which a test may change: {url, port, close, dir}.
async function site(name, port = 0) {
  const dir = path.join(folder, name);
  cpSync(k_site, dir, { recursive: true });
  const server = await serve(dir, port);
  servers.push(server);
  return { dir, port, ...server };
}

// Another version of it: other words on the start screen and the title, so another folder and other sums.
function makeNewer(dir, words) {
  const old = setName(dir);
  for (const name of readdirSync(path.join(dir, old))) renameSync(path.join(dir, old, name), path.join(dir, name));
  rmdirSync(path.join(dir, old));
  for (const file of ['index.html', 'content/text/en.json']) {
    const at = path.join(dir, file);
    writeFileSync(at, readFileSync(at, 'utf8').replaceAll('Which inhaler do you hold?', words).replaceAll(`${old}/`, ''));
    for (const ending of ['.br', '.gz']) rmSync(at + ending, { force: true });
  }
  for (const [step, ...rest] of [['named_set'], ['offline', path.join(root, 'web/js')]]) {
    execFileSync('node', [path.join(root, `ci/lib/${step}.mjs`), dir, ...rest]);
  }
  assert.notEqual(setName(dir), old);
  for (const ending of ['.br', '.gz']) rmSync(path.join(dir, `sw.js${ending}`), { force: true });
}

async function firstVisit(url, wish = {}) {
  const page = await openPage(browser, url, { ...k_keeps, ...wish });
  page.setDefaultTimeout(60_000);
  await waitForIdle(page);
  await isKept(page);
  return page;
}

async function wholeCheck(page) {
  const way = byReader(page);
  const family = familyFromAssets('soft-mist');
  await awaitScreen(page, 'choose-device');
  await way.press('button', 'Soft mist inhaler');
  await awaitScreen(page, 'ready');
  await way.press('button', 'Start');
  await takeCheck(way, (read) => answerOf(family, questionOnScreen(family, read), { lacks: ['hold-breath'], holds: [] }));
  assert.equal((await probe(page)).screen, 'result');
  await way.press('button', 'Show this to your pharmacist or nurse');
  await page.getByRole('img', { name: /^QR code/ }).waitFor();
}

test(`${k_reloads} reloads with the server gone; the first and the last do a whole check`, async () => {
  const { url, close } = await site('gone');
  const page = await firstVisit(`${url}?seed=3`);
  await close();
  for (let n = 1; n <= k_reloads; n += 1) {
    await page.reload();
    await waitForIdle(page);
    assert.equal((await probe(page)).screen, 'choose-device', `reload ${n}`);
    assert.equal((await probe(page)).problem, '');
    if (n === 1 || n === k_reloads) await wholeCheck(page);
  }
  const way = byReader(page);
  await page.goto(`${url}?seed=4`);  // by its address, in another tab's way
  await waitForIdle(page);
  await way.press('button', 'Help and about');
  await page.getByText('This page now works without a network, too.').first().waitFor();
  await closePage(page);
});

test('nothing is asked of anybody else, and after the start nothing but own files', async () => {
  const { url, close } = await site('log');
  const asked = [];
  const page = await openPage(browser, 'about:blank', k_keeps);
  page.context().on('request', (request) => asked.push(request.url()));
  await page.context().route(/.*/, (route) => (route.request().url().startsWith(url) ? route.continue() : route.abort()));
  await page.goto(`${url}?seed=3`);
  await waitForIdle(page);
  await isKept(page);
  await wholeCheck(page);
  assert.ok(asked.length > 20, `${asked.length} requests seen`);
  assert.deepEqual(asked.filter((each) => !each.startsWith(url)), []);
  await page.reload();
  await waitForIdle(page);
  await isKept(page);
  const before = (await page.evaluate(() => performance.getEntriesByType('resource').length));
  assert.ok(before > 0);
  const { port } = new URL(url);
  await close();
  const through = [];  // what still comes to the server; whether there is a newer version may be asked
  const deaf = createServer((request, response) => { through.push(request.url); response.destroy(); });
  await new Promise((heard) => { deaf.listen(Number(port), '127.0.0.1', heard); });
  await wholeCheck(page);
  await new Promise((closed) => { deaf.close(closed); deaf.closeAllConnections?.(); });
  assert.deepEqual(through.filter((each) => each !== '/sw.js'), []);
  assert.deepEqual(asked.filter((each) => !each.startsWith(url)), []);
  await closePage(page);
});

test('a newer version waits while a check is going on, is never mixed in, and begins at the start screen', async () => {
  const a = await site('versions');
  const page = await firstVisit(`${a.url}?seed=3`);
  await page.reload();
  await waitForIdle(page);
  const way = byReader(page);
  await way.press('button', 'Spray inhaler');
  await way.press('button', 'Start');
  makeNewer(a.dir, 'Which one is yours?');
  await page.evaluate(async () => { await (await navigator.serviceWorker.getRegistration()).update(); });
  await until(page, async () => (await navigator.serviceWorker.getRegistration()).waiting !== null);
  await page.waitForTimeout(7000);  // quiet for longer than a person at the start would have to be
  assert.equal((await probe(page)).screen, 'question');
  await page.reload();  // in the middle of it: still the old one, all of it
  await waitForIdle(page);
  assert.equal(await page.getByRole('heading', { level: 1 }).innerText(), 'Which inhaler do you hold?');
  assert.equal(await page.evaluate(async () => JSON.parse(await (await fetch(`${window.rehale.base}content/text/en.json`)).text()).choose.ask), 'Which inhaler do you hold?');
  await page.getByRole('heading', { name: 'Which one is yours?' }).waitFor();  // nobody touches it
  await waitForIdle(page);
  await until(page, async () => (await caches.keys()).filter((name) => name !== 'rehale-state').length === 1);
  await a.close();
  await page.reload();
  await page.getByRole('heading', { name: 'Which one is yours?' }).waitFor();
  await closePage(page);
});

test('a version that does not start gives way to the one before', async () => {
  const a = await site('bad');
  const page = await firstVisit(`${a.url}?seed=3`);
  await page.reload();
  await waitForIdle(page);
  writeFileSync(path.join(setOf(a.dir), 'rehale.wasm'), 'no module');
  for (const ending of ['.br', '.gz']) rmSync(path.join(setOf(a.dir), `rehale.wasm${ending}`), { force: true });
  makeNewer(a.dir, 'Never seen');
  await page.evaluate(async () => { await (await navigator.serviceWorker.getRegistration()).update(); });
  await until(page, async () => (await (await caches.open('rehale-state')).match(`${location.href.replace(/[?#].*/, '')}?last`)) !== undefined);
  await page.waitForFunction(() => window.rehale?.started, undefined, { polling: 100 });
  await waitForIdle(page);
  assert.equal((await probe(page)).problem, '');
  assert.equal(await page.getByRole('heading', { level: 1 }).innerText(), 'Which inhaler do you hold?');
  await a.close();
  await page.reload();
  await waitForIdle(page);
  assert.equal(await page.getByRole('heading', { level: 1 }).innerText(), 'Which inhaler do you hold?');
  await closePage(page);
});

// What became of the kept files, in the page.
const spoil = (page, kind) => page.evaluate(async (what) => {
  const name = (await caches.keys()).find((each) => each !== 'rehale-state');
  const cache = await caches.open(name);
  const keys = await cache.keys();
  if (what === 'half') await cache.delete(keys.find(({ url }) => url.endsWith('?whole')));
  if (what === 'broken') await cache.put(keys.find(({ url }) => url.endsWith('rehale.wasm')), new Response('\0asm broken', { headers: { 'content-type': 'application/wasm' } }));
  if (what === 'missing') await cache.delete(keys.find(({ url }) => url.endsWith('rehale.wasm')));
  if (what === 'gone') await caches.delete(name);
}, kind);

for (const kind of ['half', 'broken', 'missing', 'gone']) {
  test(`what was kept is ${kind}: the server's files serve; without it, a plain message`, async () => {
    const { url, close } = await site(kind);
    const page = await firstVisit(`${url}?seed=3`);
    await spoil(page, kind);
    await page.reload();
    await waitForIdle(page);
    assert.equal((await probe(page)).problem, '');
    await isKept(page);  // again
    await spoil(page, kind);
    await close();
    await page.reload().catch(() => {});
    if (kind === 'broken' || kind === 'missing') {
      await page.getByRole('heading', { name: 'A part of this page did not arrive.' }).waitFor();
    } else {
      await until(page, () => window.rehale === undefined);  // the browser's own message
    }
    await closePage(page);
  });
}

test('a kept file is gone and the server has another version: loaded again, all of it is that one', async () => {
  const a = await site('overtaken');
  const page = await firstVisit(`${a.url}?seed=3`);
  makeNewer(a.dir, 'Which one is yours?');
  writeFileSync(path.join(a.dir, 'sw.js'), 'no script');  // what is in the browser must help itself
  await spoil(page, 'missing');
  await page.reload();
  await page.getByRole('button', { name: 'Load the page again' }).click();
  await page.getByRole('heading', { name: 'Which one is yours?' }).waitFor();
  await waitForIdle(page);
  assert.equal((await probe(page)).problem, '');
  await closePage(page);
  await a.close();
});

test('no room: it works with the network, and does not say otherwise', async () => {
  const { url, close, dir } = await site('full');
  const worker = path.join(dir, 'sw.js');
  writeFileSync(worker, `Cache.prototype.put = () => Promise.reject(new DOMException('full', 'QuotaExceededError'));\n${readFileSync(worker, 'utf8')}`);
  for (const ending of ['.br', '.gz']) rmSync(worker + ending, { force: true });
  const page = await openPage(browser, `${url}?seed=3`, k_keeps);
  await waitForIdle(page);
  await page.waitForTimeout(2000);
  await wholeCheck(page);
  const way = byReader(page);
  await way.press('button', 'Help and about');
  await page.getByText(/^Version [0-9a-f]{12}$/).first().waitFor();
  assert.equal(await page.getByText('without a network, too').count(), 0);
  assert.equal(await page.evaluate(async () => (await caches.keys()).length), 0);
  await closePage(page);
  await close();
});

test('the list names every file with its own sum', () => {
  const worker = readFileSync(path.join(k_site, 'sw.js'), 'utf8');
  const listed = [...worker.matchAll(/path:"([^"]+)",sum:"sha256-([^"]+)"/g)];
  const files = readdirSync(k_site, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile())
    .map((entry) => path.relative(k_site, path.join(entry.parentPath ?? entry.path, entry.name)));
  const wanted = files.filter((file) => !/\.(br|gz)$/.test(file) && file !== 'sw.js');
  assert.deepEqual(listed.map(([, file]) => file).sort(), wanted.sort());
  for (const [, file, sum] of listed) {
    assert.equal(createHash('sha256').update(readFileSync(path.join(k_site, file))).digest('base64'), sum, file);
  }
});
