// web/shell in Debian's Chromium, on the demo page: frames on demand, pointers, sizes, preferences.
// Numbers: issue 2 part 6 and budgets (0 frames idle), users.md 1.2 (2.5.2: act on release, slide-off
// cancels), toolchain.md 4 (touch).
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { probe, waitForIdle } from './support/browser.mjs';
import { framesWhileIdle } from './support/checks.mjs';
import { startDemo, stateOf } from './support/demo.mjs';
import { clickAt, drag, find, middleOf, tap } from './support/hands.mjs';

let demo;
before(async () => { demo = await startDemo(); });
after(() => demo.end());

test('probe tells what issue 2 part 7 asks for', () => demo.with({ query: '?seed=7' }, async (page) => {
  const told = await probe(page);
  assert.equal(told.screen, 'demo');
  assert.ok(told.frames > 0 && told.frames < 20, `${told.frames} frames to start`);
  assert.ok(told.heapBytes >= 8 * 2 ** 20 && told.heapBytes <= 32 * 2 ** 20, `${told.heapBytes}`);
  assert.ok(told.mirrorNodes > 40);
  assert.match(told.buildId, /^[0-9a-f]{12}$/);
  assert.equal(told.contentId, 'demo-content');
  assert.equal(await page.evaluate(() => window.rehale.exportRun()), '{"demo":"log"}');
  assert.equal((await stateOf(page)).seed, '7');
  assert.deepEqual(page.complaints, []);
}));

test('0 frames in 5 idle seconds', () => demo.with({}, async (page) => {
  assert.equal(await framesWhileIdle(page, 5000), 0);
}));

test('a hidden page draws no frame, and draws again when seen', () => demo.with({}, async (page) => {
  const frames = async () => (await probe(page)).frames;
  const setHidden = (hidden) => page.evaluate((now) => {
    Object.defineProperty(document, 'hidden', { configurable: true, get: () => now });
    document.dispatchEvent(new Event('visibilitychange'));
  }, hidden);
  await page.evaluate(() => document.querySelector('[data-id=animate]').click());  // never rests now
  await page.waitForTimeout(300);
  const seen = await frames();
  await page.waitForTimeout(300);
  assert.ok(await frames() > seen + 3);
  await setHidden(true);
  await page.waitForTimeout(100);
  const hidden = await frames();
  await page.waitForTimeout(500);
  assert.equal(await frames(), hidden);
  await setHidden(false);
  await page.waitForTimeout(300);
  assert.ok(await frames() > hidden + 3);
}));

test('a deadline draws once, when it is due', () => demo.with({}, async (page) => {
  await clickAt(page, find(page, 'button', 'In half a second'));
  const before = (await probe(page)).frames;
  assert.equal((await stateOf(page)).timer, '0');
  await page.waitForTimeout(700);
  const told = await probe(page, { causes: true });
  assert.equal((await stateOf(page)).timer, '1');
  assert.ok(told.frames - before <= 2, `${told.frames - before} frames for one deadline`);
  assert.equal(told.causes.timer, 1);
}));

test('every frame has a cause with a name', () => demo.with({}, async (page) => {
  await clickAt(page, find(page, 'button', 'Count'));
  const { causes } = await probe(page, { causes: true });
  assert.ok(causes.pointer >= 1);
  assert.ok(Object.keys(causes).every((cause) => cause.length > 2), Object.keys(causes).join());
}));

test('a mouse click acts once', () => demo.with({}, async (page) => {
  await clickAt(page, find(page, 'button', 'Count'));
  assert.equal((await stateOf(page)).count, '1');
}));

test('a tap acts once', () => demo.with({ touch: true }, async (page) => {
  await tap(page, find(page, 'button', 'Count'));
  assert.equal((await stateOf(page)).count, '1');
}));

test("the testing library's own click acts once", () => demo.with({}, async (page) => {
  await find(page, 'button', 'Count').click();
  await waitForIdle(page);
  assert.equal((await stateOf(page)).count, '1');
}));

test('the second tap of a trembling hand is dropped', () => demo.with({ touch: true }, async (page) => {
  const { x, y } = await middleOf(find(page, 'button', 'Count'));
  await page.touchscreen.tap(x, y);
  await page.touchscreen.tap(x + 5, y + 3);
  await waitForIdle(page);
  assert.equal((await stateOf(page)).count, '1');
}));

test('sliding off before release does nothing', () => demo.with({}, async (page) => {
  const { x, y } = await middleOf(find(page, 'button', 'Count'));
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 400, y);
  await page.mouse.up();
  await waitForIdle(page);
  assert.equal((await stateOf(page)).count, '0');
}));

test('holding for 800 ms is one press', () => demo.with({ touch: true }, async (page) => {
  const { x, y } = await middleOf(find(page, 'button', 'Count'));
  const client = await page.context().newCDPSession(page);
  await client.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y }] });
  await page.waitForTimeout(800);
  assert.equal((await stateOf(page)).count, '0');
  await client.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await waitForIdle(page);
  assert.equal((await stateOf(page)).count, '1');
}));

test('a finger that drags scrolls and presses nothing', () => demo.with({ touch: true }, async (page) => {
  const rows = await find(page, 'button', 'Row 1').boundingBox();
  const x = rows.x + 100;
  await drag(page, [90, 80, 70, 60, 50, 40, 30, 20, 10, 0].map((n) => ({ x, y: rows.y - 40 + n })));
  await waitForIdle(page);
  const moved = rows.y - (await find(page, 'button', 'Row 1').boundingBox()).y;
  assert.ok(moved > 60 && moved <= 90, `moved ${moved} px for 90`);
  assert.equal((await stateOf(page)).text, 'none');
}));

test('a cancelled touch presses nothing', () => demo.with({ touch: true }, async (page) => {
  const { x, y } = await middleOf(find(page, 'button', 'Count'));
  await drag(page, [{ x, y }, { x: x + 1, y }], 'cancel');
  await waitForIdle(page);
  assert.equal((await stateOf(page)).count, '0');
}));

test('a second finger presses nothing', () => demo.with({ touch: true }, async (page) => {
  const first = { ...(await middleOf(find(page, 'button', 'Open dialog'))), id: 0 };
  const second = { ...(await middleOf(find(page, 'button', 'Count'))), id: 1 };
  const client = await page.context().newCDPSession(page);
  const send = (type, touchPoints) => client.send('Input.dispatchTouchEvent', { type, touchPoints });
  await send('touchStart', [first]);
  await send('touchStart', [first, second]);
  await send('touchEnd', [first]);
  await send('touchCancel', []);
  await waitForIdle(page);
  assert.equal((await stateOf(page)).count, '0');
}));

test('nothing stays hovered after a finger has gone', () => demo.with({ touch: true }, async (page) => {
  const box = await find(page, 'button', 'Count').boundingBox();
  const shot = () => page.screenshot({ clip: { x: box.x + 200, y: box.y + 10, width: 40, height: 20 } });
  const before = await shot();
  await tap(page, find(page, 'button', 'Count'));
  assert.ok(before.equals(await shot()));
}));

test('the wheel scrolls what lies under it', () => demo.with({}, async (page) => {
  const row = await find(page, 'button', 'Row 1').boundingBox();
  await page.mouse.move(row.x + 20, row.y + 20);
  await page.mouse.wheel(0, 100);
  await waitForIdle(page);
  assert.equal(Math.round(row.y - (await find(page, 'button', 'Row 1').boundingBox()).y), 100);
}));

test('preferences are read, and followed while running', () => demo.with({ dark: true, calm: true }, async (page) => {
  let state = await stateOf(page);
  assert.deepEqual([state.dark, state.calm], ['1', '1']);
  await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'no-preference' });
  await page.waitForFunction(() => document.documentElement.dataset.ground === 'light');
  await waitForIdle(page);
  state = await stateOf(page);
  assert.deepEqual([state.dark, state.calm], ['0', '0']);
  assert.equal(await page.evaluate(() => document.documentElement.dataset.ground), 'light');
}));

// What became of the fetch. The page may come to rest before the answer is there.
async function fetched(page) {
  await clickAt(page, find(page, 'button', 'Fetch'));
  await page.waitForFunction(() => !document.querySelector('[data-id="state"]').textContent.endsWith(' text none'));
  return (await stateOf(page)).text;
}

test('a text file arrives, and one that does not says why', async () => {
  await demo.with({ query: '?path=favicon.svg' }, async (page) => {
    assert.match(await fetched(page), /^got <svg/);
  });
  await demo.with({ query: '?path=none.json' }, async (page) => {
    assert.equal(await fetched(page), 'http|none.json|the server answered 404');
  });
  await demo.with({ query: '?path=http://192.0.2.1/x' }, async (page) => {
    assert.match(await fetched(page), /^outside\|/);
  });
});
