// What a person does, found through the accessibility tree alone: by mouse, by touch, by keyboard.
import { waitForIdle } from './browser.mjs';

// web/js/pointer.js drops a second tap on the same place within 400 ms, web/kit a second touch anywhere.
const k_echo_ms = 420, k_echo_px = 30, k_quiet_ms = 80;
const lastTap = new WeakMap();

export const find = (page, role, name, options = {}) =>
  page.getByRole(role, { ...(name !== undefined && { name }), exact: true, ...options });

export async function middleOf(locator) {
  const box = await locator.boundingBox();
  if (!box) throw new Error(`not on the page: ${locator}`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

async function clearOfEcho(page, { x, y }, touch) {
  const last = lastTap.get(page);
  if (!last || !(touch || Math.hypot(x - last.x, y - last.y) < k_echo_px)) return;
  const since = Date.now() - last.at;
  if (since < k_echo_ms) await page.waitForTimeout(k_echo_ms - since);
}

// Waits until the page rests. The app counts from when it heard a tap: under load that may be later than the tap.
export async function rest(page) {
  await waitForIdle(page, { quiet: k_quiet_ms });
  const last = lastTap.get(page);
  if (last) last.at = Math.max(last.at, Date.now() - k_quiet_ms);
}

// How many releases the page has heard. A tap is acknowledged before that, and under load long before.
const heard = (page) => page.evaluate(() => {
  if (window.heard === undefined) {
    window.heard = 0;
    window.addEventListener('pointerup', () => { window.heard += 1; }, { capture: true });
  }
  return window.heard;
});

// A finger, or the mouse, at a point. A finger's context needs {touch: true}; to: where it drifts while it is down.
export async function tapPoint(page, { x, y }, to) {
  await clearOfEcho(page, { x, y }, true);
  const before = await heard(page);
  if (to) await drag(page, [{ x, y }, { x: (x + to.x) / 2, y: (y + to.y) / 2 }, to]);
  else await page.touchscreen.tap(x, y);
  await page.waitForFunction((count) => window.heard > count, before, { polling: 10 });
  lastTap.set(page, { x, y, at: Date.now() });
}

export async function clickPoint(page, { x, y }) {
  await clearOfEcho(page, { x, y }, false);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.up();
  lastTap.set(page, { x, y, at: Date.now() });
}

// At the middle of the element.
export async function tap(page, locator) {
  await tapPoint(page, await middleOf(locator));
  await rest(page);
}

export async function clickAt(page, locator) {
  await clickPoint(page, await middleOf(locator));
  await rest(page);
}

// Chromium's, by its own protocol. A page of another browser brings its own.
async function fingerOf(page) {
  const client = await page.context().newCDPSession(page);
  const send = (type, touchPoints) => client.send('Input.dispatchTouchEvent', { type, touchPoints });
  return {
    down: (point) => send('touchStart', [point]), move: (point) => send('touchMove', [point]),
    up: () => send('touchEnd', []), cancel: () => send('touchCancel', []),
  };
}

// A finger through a list of points, one every 16 ms; end: 'up', 'cancel' or 'stay'.
export async function drag(page, points, end = 'up') {
  const finger = (page.finger ??= await fingerOf(page));
  await finger.down(points[0]);
  for (const point of points.slice(1)) {
    await page.waitForTimeout(16);
    await finger.move(point);
  }
  if (end !== 'stay') await finger[end]();
  await page.waitForTimeout(50);
}

export async function press(page, key, times = 1) {
  for (let n = 0; n < times; n += 1) await page.keyboard.press(key);
  await waitForIdle(page);
}

// The element that has the focus, as role and name of the accessibility tree.
export async function focused(page) {
  return page.evaluate(() => {
    const e = document.activeElement;
    if (!e || e === document.body) return { role: '', name: '', id: '' };
    const role = e.getAttribute('role') ?? (e.tagName === 'INPUT' ? e.type : e.tagName.toLowerCase());
    return { role, name: e.ariaLabel ?? e.textContent, id: e.dataset.id ?? '' };
  });
}

// Tab (or Shift+Tab) until that element has the focus. Only keys; throws when it is not reached.
export async function tabTo(page, role, name, { back = false, most = 60 } = {}) {
  const wanted = await find(page, role, name).elementHandle({ timeout: 2000 });
  for (let n = 0; n < most; n += 1) {
    if (await wanted.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press(back ? 'Shift+Tab' : 'Tab');
    await waitForIdle(page);
  }
  throw new Error(`${role} '${name}' is not reached by Tab`);
}
