// A shared device (#kiosk): people one after another leave nothing; a page that breaks comes back by itself, and says
// where help is when it breaks too often; four keys are enough; staff come in by a code. Sources: users.md 3; WCAG 2.2.1.
import assert from 'node:assert/strict';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { k_sizes, openPage, closePage, probe, waitForIdle } from './support/browser.mjs';
import { axe } from './support/checks.mjs';
import { atStart, held, k_may_stay, kept, leave, timeFrames, visit } from './support/kiosk.mjs';
import { underPolicy } from './support/policy.mjs';
import { appForTests } from './support/run.mjs';
import { lookOver } from './support/screen_checks.mjs';
import { awaitScreen, k_families } from './support/walk.mjs';
import { byReader } from './support/ways.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const k_visits = Number(process.env.REHALE_VISITS ?? 50);
const k_soak = process.env.REHALE_VISITS !== undefined;  // ci/soak: every frame drawn, and timed
const app = appForTests({ unseen: !k_soak }, { whole: k_soak });
const families = Object.values(k_families);
const k_wish = { query: '#kiosk', calm: true };

function assertNothingStays({ storage, databases, cookies, state, address, run }) {
  assert.deepEqual(storage.map(([name]) => name).filter((name) => !k_may_stay.includes(name)), []);
  assert.deepEqual({ databases, cookies, state, run }, { databases: [], cookies: '', state: null, run: '' });
  assert.match(address, /#kiosk$/);
  for (const [name, text] of storage) {
    if (name === 'rehale.counted') assert.match(text, /^1 \d{5}( [a-z-]+ \d+;?)+$/, 'counts only');
    if (name === 'rehale.health') assert.deepEqual(Object.keys(JSON.parse(text)).sort(), ['failed', 'late', 'since', 'visits']);
  }
}

test(`${k_visits} people one after another leave nothing, and memory stays as it is`, (context) => app.with({ ...k_wish, before: timeFrames }, async (page) => {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  await atStart(page);
  const { past } = await kept(page);
  const after = [], back_ms = [], frames_ms = [];
  for (let n = 0; n < k_visits; n += 1) {
    const answered = await visit(page, families[n % families.length], n);
    assert.ok(answered >= 8 && answered <= 12, `${answered} questions`);
    frames_ms.push(...await page.evaluate(() => window.framesMs));
    back_ms.push(await leave(page));
    if (n % 10 === 9) after.push({ n, wasm: (await probe(page)).heapBytes, mirror: (await probe(page)).mirrorNodes, ...await held(session) });
  }
  const stays = await kept(page);
  assertNothingStays(stays);
  assert.equal(stays.past, past, 'no history to go back to');
  const checks = [...stays.storage.find(([name]) => name === 'rehale.counted')[1].matchAll(/(?:^1 \d{5}|;) [a-z-]+ (\d+)/g)];
  assert.equal(checks.reduce((sum, [, count]) => sum + Number(count), 0), k_visits, 'each person counted once');
  const [first, ...later] = after;
  assert.ok(later.length > 0, 'too few visits to tell');
  for (const now of later) {
    assert.equal(now.wasm, first.wasm);
    assert.equal(now.mirror, first.mirror);
    const slope = (now.heap - first.heap) / (now.n - first.n);
    if (now === later.at(-1)) assert.ok(slope <= 1024, `${slope.toFixed(0)} bytes a visit`);
  }
  for (const list of [back_ms, frames_ms]) list.sort((a, b) => a - b);
  const p99_ms = frames_ms[Math.floor(frames_ms.length * 0.99)];
  context.diagnostic(`start stands again after ${back_ms[Math.floor(back_ms.length / 2)]} ms (median), ${back_ms.at(-1)} ms at most; 99 of 100 of ${frames_ms.length} frames within ${p99_ms.toFixed(1)} ms; ${JSON.stringify(after.at(-1))}`);
  if (k_soak) {
    assert.ok(p99_ms <= 50, `${p99_ms} ms`);  // the bound; a time, so not in ci/test
    await page.screenshot({ path: path.join(root, '.build/kiosk-after-soak.png') });
  }
  assert.deepEqual(page.complaints, []);
}));

test('nobody there: a warning, more time by one press, then the start, by the clock of the page', () => app.with({
  ...k_wish, route: (page) => page.clock.install(),
}, async (page) => {
  const way = byReader(page);
  await way.press('button', 'Start');
  await awaitScreen(page, 'choose-device');
  for (let n = 0; n < 2; n += 1) {
    await page.mouse.move(5, 300);
    await page.mouse.down();
    await page.mouse.up();
    await page.clock.fastForward(91_000);
    const dialog = page.getByRole('dialog', { name: 'Are you still there?' });
    await dialog.waitFor();
    assert.deepEqual(await axe(page), []);
    await way.press('button', 'I am still here');
    await dialog.waitFor({ state: 'detached' });
  }
  await page.evaluate(() => { window.is_old = true; });
  await page.clock.fastForward(91_000);
  await page.clock.fastForward(31_000);
  await atStart(page);
}));

test('four keys are enough: next, before, Enter, Escape', () => app.with({ ...k_wish, size: k_sizes.screen }, async (page) => {
  const onto = async (name) => {
    for (let n = 0; n < 40; n += 1) {
      await page.keyboard.press('ArrowRight');
      if (await page.evaluate(() => document.activeElement.textContent || document.activeElement.ariaLabel) === name) return page.keyboard.press('Enter');
    }
    throw new Error(`cannot be reached: ${name}`);
  };
  await onto('Start');
  await awaitScreen(page, 'choose-device');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  const focused = () => page.evaluate(() => document.activeElement.dataset.id);
  const second = await focused();
  await page.keyboard.press('ArrowDown');
  assert.ok(second && await focused() !== second, second);
  await page.keyboard.press('ArrowUp');
  assert.equal(await focused(), second);
  await onto('Soft mist inhaler');
  await awaitScreen(page, 'ready');
  await onto('Start');
  await awaitScreen(page, 'question');
  for (let n = 0; n < 14 && (await probe(page)).screen === 'question'; n += 1) {
    const answer = await page.evaluate(() => document.querySelector('#mirror :is([type=radio], [type=checkbox])')?.ariaLabel);
    if (answer) await onto(answer);
    await onto(answer ? 'Next' : "I'm not sure");
    await waitForIdle(page);
  }
  await awaitScreen(page, 'kiosk-result');
  await onto('Show my result');
  await awaitScreen(page, 'result');
  await page.evaluate(() => { window.is_old = true; });
  await onto('I am done');
  await atStart(page);
}));

test('staff come in by the code that was set first; cleaning takes no touch', () => app.with({ ...k_wish, route: underPolicy }, async (page) => {
  const way = byReader(page);
  const give = async (code) => {
    await way.begin('button', 'For staff');
    const dialog = page.getByRole('dialog', { name: 'Staff code' });
    await dialog.waitFor();
    for (const digit of code) await dialog.getByRole('button', { name: digit, exact: true }).click();
    await dialog.getByRole('button', { name: 'Go on' }).click();
    return dialog;
  };
  const short = await give('123');
  await short.getByRole('alert').filter({ hasText: 'four to eight digits' }).waitFor();
  await short.getByRole('button', { name: 'Back' }).click();
  await give('2580');
  await awaitScreen(page, 'kiosk-staff');
  await waitForIdle(page);
  assert.deepEqual(await lookOver(page, {}), []);
  await page.evaluate(() => { window.is_old = true; });
  await way.press('button', 'Back to the start');
  await atStart(page);
  const wrong = await give('2581');
  await wrong.getByRole('alert').filter({ hasText: 'That is not the code' }).waitFor();
  await page.keyboard.press('Escape');
  assert.doesNotMatch((await kept(page)).storage.flat().join(' '), /2580|2581/);
  await give('2580');
  await awaitScreen(page, 'kiosk-staff');
  await way.press('button', 'Lock the screen to clean it');
  await awaitScreen(page, 'kiosk-clean');
  assert.equal(await page.locator('#mirror button').count(), 0);
  await page.mouse.click(100, 300);
  await page.keyboard.press('Enter');
  assert.equal((await probe(page)).screen, 'kiosk-clean');
  assert.deepEqual(page.complaints, []);
}));

// A page whose module is broken as long as broken() says so.
async function withBroken(broken, use) {
  const page = await openPage(app.browser, 'about:blank', { calm: true, unseen: true });
  await page.route('**/rehale.wasm', (route) => (broken() ? route.fulfill({ body: 'no module', contentType: 'application/wasm' }) : route.continue()));
  await page.goto(`${app.site.url}#kiosk`);
  await use(page);
  await closePage(page);
}

test('a page that does not start comes back by itself', async () => {
  let times = 0;
  await withBroken(() => (times += 1) <= 1, async (page) => {
    await page.locator('#problem').waitFor({ state: 'visible' });
    await atStart(page);
    assert.match((await kept(page)).storage.flat().join(), /"failed":1/);
  });
});

test('a page that breaks three times shows the steps and a code for the own phone', () => withBroken(() => true, async (page) => {
  await page.getByRole('heading', { name: 'This screen needs a rest' }).waitFor({ timeout: 30_000 });
  for (const name of families) await page.getByRole('heading', { name }).waitFor();
  assert.equal(await page.locator('ol').count(), families.length);
  assert.ok(await page.locator('ol').first().locator('li').count() >= 8);
  await page.getByRole('img').waitFor();
  assert.deepEqual(await axe(page), []);
}));

test('a picture that goes away and does not come back: it begins anew', () => app.with(k_wish, async (page) => {
  await page.evaluate(() => {
    window.is_old = true;
    const canvas = document.getElementById('canvas');
    (canvas.getContext('webgl2') ?? canvas.getContext('webgl')).getExtension('WEBGL_lose_context').loseContext();
  });
  await atStart(page, 30_000);
}));

test('a browser that keeps nothing, and a clock that jumps by a day, disturb nobody', () => app.with({
  ...k_wish,
  before: () => {
    for (const name of ['localStorage', 'sessionStorage']) Object.defineProperty(window, name, { get: () => { throw new DOMException('off', 'SecurityError'); } });
  },
}, async (page) => {
  await atStart(page);
  await page.evaluate(() => { const real = Date.now; Date.now = () => real() + 86_400_000; });
  await visit(page, families[0], 0);
  await page.evaluate(() => { const real = Date.now; Date.now = () => real() - 2 * 86_400_000; });
  await leave(page);
  assert.equal((await probe(page)).problem, '');
  assert.deepEqual(page.complaints, []);
}));

for (const [label, wish] of Object.entries({
  phone: { size: k_sizes.phone }, 'tablet, dark': { size: k_sizes.tablet, dark: true }, 'screen, in Spanish': { size: k_sizes.screen, lang: 'es' },
})) {
  test(`every screen of it holds what all screens hold: ${label}`, () => app.with({ ...k_wish, ...wish, query: `?lang=${wish.lang ?? 'en'}#kiosk` }, async (page) => {
    const look = async (name, how = {}) => {
      await waitForIdle(page, { quiet: 150 });
      assert.deepEqual((await lookOver(page, how)).map((each) => `${name}: ${each}`), []);
    };
    await atStart(page);
    await look('start', { first: true });
    const pressId = async (id) => {
      await page.locator(`[data-id="${id}"]`).evaluate((element) => element.click());
      await waitForIdle(page);
    };
    await pressId('go');
    await look('devices');
    await pressId('devices/spray');
    await awaitScreen(page, 'ready');
    await pressId('go');
    for (let n = 0; n < 14 && (await probe(page)).screen === 'question'; n += 1) await pressId('unsure');
    await awaitScreen(page, 'kiosk-result');
    await look('result is ready');
    await pressId('show');
    await look('result');
    await pressId('hand-over');
    await page.getByRole('img').waitFor();
    await waitForIdle(page);
    await look('a code to scan');
    assert.deepEqual(page.complaints, []);
  }));
}
