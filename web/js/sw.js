// The page without a network: keeps one whole set of its files, and answers from that set alone. A new version is
// fetched whole beside the old one and waits until the page says that nobody is in the middle of anything; the old
// one is kept until the new one has started well, and comes back if it does not. A script of its own (a service
// worker). Must not know what the files say.

import { copyFrom, fetchGood, isGood } from './sw_files.js';

const SET = SET_NAME, FILES = SET_FILES;  // ci/lib/offline.mjs: 'rehale-' and a hash; [{path, sum}], sum as for `integrity`
const STATE = 'rehale-state', WHOLE = 'whole', CURRENT = 'current', LAST = 'last';
const byPath = new Map(FILES.map((file) => [file.path, file]));
const at = (path) => new URL(path, self.registration.scope).href;

const readNote = async (cache, name) => (await (await caches.open(cache)).match(at(`?${name}`)))?.text();
const writeNote = async (cache, name, text) => (await caches.open(cache)).put(at(`?${name}`), new Response(text));

const isWhole = async (name) => await caches.has(name) && await readNote(name, WHOLE) === name;

// Whole, or not at all: a set that broke off has no note, and is begun again.
async function fetchAll() {
  if (await isWhole(SET)) return;
  await caches.delete(SET);
  const cache = await caches.open(SET);
  const older = (await caches.keys()).filter((name) => name.startsWith('rehale-') && name !== SET && name !== STATE);
  try {
    for (const file of FILES) {
      const response = await copyFrom(older, at(file.path), file.sum) ?? await fetchGood(at(file.path), file.sum);
      await cache.put(at(file.path), response);
    }
    await writeNote(SET, WHOLE, SET);
  } catch (error) {
    await caches.delete(SET);
    throw error;
  }
}

// At most one at a time: each begins with an empty set.
let fetching;
const makeWhole = () => {
  fetching ??= fetchAll().finally(() => { fetching = undefined; });
  return fetching;
};

// The set in use: this one, unless it did not start (then the one before).
async function setInUse() {
  const named = await readNote(STATE, CURRENT);
  return named !== undefined && await isWhole(named) ? named : SET;
}

async function takeOver() {
  const before = await readNote(STATE, CURRENT);
  if (before !== undefined && before !== SET && await isWhole(before)) await writeNote(STATE, LAST, before);
  await writeNote(STATE, CURRENT, SET);
}

// A page of this set stands: what came before is not needed any more. What comes next may be there already: then later.
async function startedWell() {
  const keep = [await setInUse(), SET, STATE];
  for (const name of await caches.keys()) {
    if (self.registration.installing || self.registration.waiting) return;
    if (name.startsWith('rehale-') && !keep.includes(name)) await caches.delete(name);
  }
}

// The browser may have taken away what was kept: it is fetched again.
async function keepsIt() {
  return await isWhole(await setInUse()) || makeWhole().then(() => true, () => false);
}

// This set did not start: back to the one before, where there is one.
async function goBack() {
  const last = await readNote(STATE, LAST);
  if (last === undefined || last === await setInUse() || !await isWhole(last)) return false;
  await writeNote(STATE, CURRENT, last);
  return true;
}

// Only while one page is open: another one might be in the middle of a check.
async function takeOverIfAlone() {
  const pages = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
  if (pages.length <= 1) await self.skipWaiting();
}

// True: the server has another version by now. Without an answer nobody knows.
async function isOvertaken(request) {
  const same = await fetch(request).catch(() => undefined);
  if (same?.ok) return true;  // under this name, but not this file
  const page = await fetch(at('index.html'), { cache: 'no-cache' }).catch(() => undefined);
  return page?.ok === true && !await isGood(page, byPath.get('index.html').sum);
}

// A kept file is gone or broken: the same one again. The server has another version by now: then the set is of no use,
// and the page, loaded again, comes from the server alone. Never one file of this and one of that.
async function mend(request, path, sum) {
  try {
    const response = await fetchGood(at(path), sum);
    await (await caches.open(SET)).put(at(path), response.clone()).catch(() => {});
    return response;
  } catch {
    if (await isOvertaken(request)) await caches.delete(SET);
    return Response.error();
  }
}

async function answer(request, path) {
  const name = await setInUse();
  if (!await isWhole(name)) return fetch(request);  // taken away by the browser
  const kept = await caches.match(at(path), { cacheName: name });
  const sum = byPath.get(path)?.sum;
  // Of an older set there are no sums here: it was checked when it came.
  if (kept && (name !== SET || await isGood(kept, sum))) return kept;
  return name === SET && sum ? mend(request, path, sum) : fetch(request);
}

self.addEventListener('install', (event) => event.waitUntil(makeWhole()));
self.addEventListener('activate', (event) => event.waitUntil(takeOver()));
self.addEventListener('message', (event) => {
  const { ask } = event.data ?? {};
  const tell = (done) => event.ports[0]?.postMessage(done);
  if (ask === 'take over') event.waitUntil(takeOverIfAlone());
  if (ask === 'started well') event.waitUntil(startedWell());
  if (ask === 'go back') event.waitUntil(goBack().then(tell, () => tell(false)));
  if (ask === 'keep') event.waitUntil(keepsIt().then(tell, () => tell(false)));
});
self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || !request.url.startsWith(self.registration.scope)) return;
  const path = request.url.replace(/[?#].*/s, '').slice(self.registration.scope.length) || 'index.html';
  event.respondWith(answer(request, path));
});
