// A hand that shakes: each tap lands beside what it aims at, and drifts while it is down. Whoever uses it is told what
// became of each tap. Landing: normal noise on each axis (users.md 2.3 and 8, expectation 7); drift: up to what the page
// forgives.
import { find, rest, tapPoint } from './hands.mjs';
import { reach } from './ways.mjs';

export const k_sigma_mm = 3.4, k_drift_px = 24;
export const k_px_per_mm = 160 / 25.4;  // on a phone (users.md 2.3); as CSS counts it would be 96: REHALE_SIGMA_PX=12.9

// Uniform in [0, 1): small, seeded, the same everywhere.
export function seeded(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let n = Math.imul(state ^ (state >>> 15), state | 1);
    n ^= n + Math.imul(n ^ (n >>> 7), n | 61);
    return ((n ^ (n >>> 14)) >>> 0) / 2 ** 32;
  };
}

// Two independent normal numbers (Box and Muller).
export function normals(random, sigma) {
  const radius = sigma * Math.sqrt(-2 * Math.log(1 - random()));
  const angle = 2 * Math.PI * random();
  return [radius * Math.cos(angle), radius * Math.sin(angle)];
}

// All that a press could change, as text: screen, words, states, values and where the page is scrolled to. While the
// page counts seconds, its words change by themselves: then only what can be pressed counts.
const stateOf = (page) => page.evaluate(() => {
  const all = [...document.querySelectorAll('#mirror [data-id]')];
  const counts = all.some((element) => element.textContent === 'Tap to stop');
  const told = all.filter((element) => !counts || element.matches('button, input')).map((element) =>
    [element.dataset.id, element.ariaLabel ?? element.textContent, element.checked, element.value, element.ariaExpanded]);
  const top = document.querySelector('h1')?.getBoundingClientRect().top;
  return JSON.stringify([window.rehale.probe().screen, top, told]);
});

// The control at a point, by its id; '' for none, or off the screen.
const hitAt = (page, { x, y }) => page.evaluate(([left, top]) =>
  document.elementFromPoint(left, top)?.closest('#mirror :is(button, input, a)')?.dataset.id ?? '', [x, y]);

// The middle of what can be seen of it. scrolled into view as a finger does it.
async function aimAt(way, target) {
  await reach(way.page, target, way.scroll);
  return target.evaluate((element) => {
    const { left, top, width, height } = element.getBoundingClientRect();
    const { clip = [0, 0, 0, 0] } = window.rehale.probe({ rects: true }).rects.find(({ id }) => id === element.dataset.id);
    const [from, to] = clip[2] > 0 ? [clip[1], clip[1] + clip[3]] : [0, innerHeight];
    return { id: element.dataset.id, x: left + width / 2, y: (Math.max(top, from) + Math.min(top + height, to)) / 2 };
  });
}

// shaky(way by touch, {sigma_px, drift_px, random}) -> {taps, missed, wrong: [words], tap(role, name)}; tap gives 'right',
// 'missed' (nothing happened) or 'wrong' (something else did).
export function shaky(way, { sigma_px, drift_px, random }) {
  const { page } = way;
  const hand = { taps: 0, missed: 0, wrong: [] };
  const land = async ({ x, y }) => {
    const [dx, dy] = normals(random, sigma_px);
    const angle = 2 * Math.PI * random(), far = drift_px * random();
    const from = { x: x + dx, y: y + dy };
    const to = { x: from.x + far * Math.cos(angle), y: from.y + far * Math.sin(angle) };
    const { width, height } = page.viewportSize();
    const off = ({ x: left, y: top }) => left < 0 || top < 0 || left >= width || top >= height;
    if (off(from)) return '';  // beside the screen
    const hit = await hitAt(page, from);
    await tapPoint(page, from, off(to) ? from : to);
    await rest(page);
    return hit;
  };
  hand.tap = async (role, name) => {
    const aim = await aimAt(way, find(page, role, name));
    const before = await stateOf(page);
    const hit = await land(aim);
    hand.taps += 1;
    if (hit === aim.id) return 'right';
    if (await stateOf(page) === before) {
      hand.missed += 1;
      return 'missed';
    }
    hand.wrong.push(`${hit || 'nothing'} instead of ${role} '${name}'`);
    return 'wrong';
  };
  return hand;
}
