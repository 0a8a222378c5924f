// Crisp at any density, at once after any change of size: one line of one device pixel, drawn by the demo,
// is one pixel of the screenshot, black or white and nothing between.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { waitForIdle } from './support/browser.mjs';
import { strayBoxes } from './support/checks.mjs';
import { startDemo } from './support/demo.mjs';

let demo;
before(async () => { demo = await startDemo(); });
after(() => demo.end());

// Grey levels of a row of device pixels through the demo's pattern, as the compositor shows it.
async function pattern(page, density) {
  const shot = await page.screenshot({ clip: { x: 600, y: 120, width: 12, height: 4 }, scale: 'device' });
  return page.evaluate(async ([base64, wide]) => {
    const image = await createImageBitmap(new Blob([Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))]));
    const canvas = new OffscreenCanvas(image.width, image.height).getContext('2d');
    canvas.drawImage(image, 0, 0);
    return [...canvas.getImageData(0, 0, wide, 1).data].filter((_, n) => n % 4 === 0);
  }, [shot.toString('base64'), Math.round(12 * density)]);
}

const buffer = (page) => page.evaluate(() => {
  const canvas = document.getElementById('canvas');
  return [canvas.width, canvas.height];
});

for (const density of [1, 2, 3]) {
  test(`one device pixel stays one at density ${density}`, () => demo.with({ density }, async (page) => {
    assert.deepEqual(await buffer(page), [1000 * density, 800 * density]);
    const levels = await pattern(page, density);
    assert.deepEqual([...new Set(levels)].sort(), [0, 255], levels.join());
    for (let n = 1; n < levels.length; n += 1) assert.notEqual(levels[n], levels[n - 1], levels.join());
    assert.deepEqual(await strayBoxes(page), []);
  }));
}

for (const density of [1.25, 1.5, 2.625]) {
  test(`the buffer is the screen's own pixels at density ${density}`, () => demo.with({ density }, async (page) => {
    const [w, h] = await buffer(page);
    assert.ok(Math.abs(w - 1000 * density) <= 1 && Math.abs(h - 800 * density) <= 1, `${w} x ${h}`);
  }));
}

test('a change of size is followed', () => demo.with({}, async (page) => {
  await page.setViewportSize({ width: 700, height: 900 });
  await waitForIdle(page);
  assert.deepEqual(await buffer(page), [700, 900]);
  assert.deepEqual(await strayBoxes(page), []);
}));

test('a change of density is followed', () => demo.with({}, async (page) => {
  const client = await page.context().newCDPSession(page);
  await client.send('Emulation.setDeviceMetricsOverride', { width: 1000, height: 800, deviceScaleFactor: 2, mobile: false });
  await page.mouse.move(5, 5);  // emulation alone tells the page nothing; the next frame notices
  await waitForIdle(page);
  assert.deepEqual(await buffer(page), [2000, 1600]);
}));

test('the browser may enlarge the page', () => demo.with({}, async (page) => {
  assert.doesNotMatch(await page.locator('meta[name=viewport]').getAttribute('content'), /user-scalable|maximum-scale/);
  assert.equal(await page.evaluate(() => getComputedStyle(document.getElementById('stage')).touchAction), 'pinch-zoom');
}));
