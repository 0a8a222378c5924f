// The second part of the WASM module: not waited for, found when wanted, and told when it cannot come.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { anyAnswer } from './support/answers.mjs';
import { probe, waitForIdle } from './support/browser.mjs';
import { appForTests } from './support/run.mjs';
import { awaitScreen, k_families, openFamily, takeCheck } from './support/walk.mjs';
import { byReader } from './support/ways.mjs';

const k_later = '**/later-*.wasm';
const app = appForTests();

const never = () => {};
const gone = (route) => route.fulfill({ status: 404, contentType: 'text/plain', body: 'no' });
// fetch() is answered by `other`, a request that the page waits for as usual.
const onFetch = (other) => (route) => (route.request().resourceType() === 'xhr' ? route.continue() : other(route));
const routed = (answer) => ({ query: '?seed=1', route: (page) => page.route(k_later, answer) });

for (const family of Object.keys(k_families)) {
  test(`the first question of ${family} needs nothing of it`, () => app.with(routed(never), async (page) => {
    await openFamily(byReader(page), family);
    await awaitScreen(page, 'question');
    const { later, laterWaits } = await probe(page);
    assert.deepEqual([later, laterWaits], ['to come', 0]);
  }));
}

test('it arrives by itself, and nothing has waited for it', () => app.with({}, async (page) => {
  await page.waitForFunction(() => window.rehale.probe().later === 'here');
  assert.equal((await probe(page)).laterWaits, 0);
}));

test('what wants it before it is there waits for it, and goes well', () => app.with(routed(onFetch(never)), async (page) => {
  await openFamily(byReader(page), 'spray');
  await takeCheck(byReader(page), anyAnswer);
  const { later, laterWaits } = await probe(page);
  assert.deepEqual([later, laterWaits], ['here', 1]);
  assert.deepEqual(page.complaints, []);
}));

test('one that never comes is told when it is wanted, with a way out', () => app.with(routed(gone), async (page) => {
  await openFamily(byReader(page), 'spray');
  await awaitScreen(page, 'question');
  await page.getByRole('button', { name: "I'm not sure" }).evaluate((element) => element.click());
  await page.locator('#problem').waitFor();
  assert.match(await page.locator('#problem').innerText(), /A part of this page did not arrive\.\s+Check that you are online/);
  await page.unroute(k_later);
  await page.getByRole('button', { name: 'Load the page again' }).click();
  await awaitScreen(page, 'choose-device');
}));

test('it is asked for again until it comes', () => app.with({ ...routed(gone), route: (page) => page.route(k_later, gone, { times: 1 }) },
  async (page) => {
    await waitForIdle(page);
    await page.waitForFunction(() => window.rehale.probe().later === 'here', undefined, { timeout: 20_000 });
    assert.equal((await probe(page)).laterWaits, 0);
  }));
