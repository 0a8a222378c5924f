// What must hold on every screen. Sources: users.md 1.2 (WCAG 2.2, and the sizes marked [T]) and 1.4 (mirror parity),
// issue 2 (axe clean with target-size on, boxes within 2 px, answers at least 64 px high, 0 frames at rest).
import { probe } from './browser.mjs';
import { axe, spoken, strayBoxes } from './checks.mjs';
import { strayEdges } from './drawn.mjs';
import { focused, press } from './hands.mjs';

const k_named = ['button', 'radio', 'checkbox', 'spinbutton', 'heading', 'image', 'radiogroup', 'group', 'dialog', 'progressbar', 'link'];

// Every control, heading, picture and group has a name, and no other of its kind has the same.
async function names(page) {
  const nodes = (await spoken(page)).filter(({ role }) => k_named.includes(role));
  const empty = nodes.filter(({ name }) => name.trim() === '').map(({ role }) => `a ${role} has no name`);
  const keys = nodes.map(({ role, name }) => `${role} '${name}'`);
  const twice = keys.filter((key, n) => keys.indexOf(key) !== n).map((key) => `twice: ${key}`);
  return [...empty, ...twice];
}

// One h1 that can be focused; the focus is on it, or in the dialog that lies over it.
async function headingAndFocus(page, { first, dialog }) {
  const problems = [];
  const titles = await page.locator('h1').evaluateAll((all) =>
    all.filter((e) => e.checkVisibility()).map((e) => e.tabIndex === -1 && e.hasAttribute('tabindex')));
  if (titles.length !== 1 || !titles[0]) problems.push(`h1, each focusable or not: [${titles}]`);
  const { role, name } = await focused(page);
  const inDialog = await page.evaluate(() => document.activeElement.closest('[role=dialog]') !== null);
  const fine = dialog ? inDialog : role === 'h1' || (first && role === '');
  if (!fine) problems.push(`the focus is on ${role} '${name}'`);
  return problems;
}

// Nothing sticks out sideways; what is pressed is large enough.
async function sizes(page) {
  return page.evaluate(() => {
    const { scrollWidth } = document.scrollingElement;
    const problems = scrollWidth > innerWidth ? [`the page is ${scrollWidth} px wide`] : [];
    for (const element of document.querySelectorAll('#mirror [data-id]')) {
      const { left, right, width, height } = element.getBoundingClientRect();
      const name = element.ariaLabel ?? element.textContent;
      if (left < -0.5 || right > innerWidth + 0.5) problems.push(`'${name}' lies from ${left} to ${right}`);
      if (!element.matches('button, input')) continue;
      const least = element.matches('[type=radio], [type=checkbox]') ? 64 : 48;
      if (width < least || height < least) problems.push(`'${name}' is ${width} × ${height}, not ${least}`);
    }
    return problems;
  });
}

// Axe knows no clip-path: what is scrolled up behind the top bar, and cut off there, counts as lying over its
// buttons. Who says what a press hits is the browser: 24 × 24 px (WCAG 2.5.8) in the middle must all be the target's.
const isHit = (page, finding) => page.evaluate((id) => {
  const element = id && document.querySelector(`[data-id="${id}"]`);
  if (!element) return false;
  const { left, top, width, height } = element.getBoundingClientRect();
  const steps = [-12, -6, 0, 6, 11.9];
  return steps.every((x) => steps.every((y) =>
    element.contains(document.elementFromPoint(left + width / 2 + x, top + height / 2 + y))));
}, finding.match(/^target-size: <[^>]*data-id="([^"]+)"/)?.[1]);

// Findings of axe, and of them those about targets that the scroll area cuts off now: [{text, cut: id or ''}].
async function axeWithCuts(page) {
  const cut = await page.evaluate(() => window.rehale.probe({ rects: true }).rects
    .filter(({ rect, clip }) => clip && (rect[1] < clip[1] || rect[1] + rect[3] > clip[1] + clip[3])).map(({ id }) => id));
  const findings = [];
  for (const text of await axe(page)) if (!await isHit(page, text)) findings.push(text);
  return findings.map((text) => ({
    text, cut: cut.find((id) => text.startsWith('target-size') && text.includes(`data-id="${id}"`)) ?? '',
  }));
}

// Axe knows no scroll area: it takes what lies half behind the pinned actions for covered. Such a target counts only
// if axe finds it at the other end of the scroll area, too. Scrolled there, the boxes must still be right.
async function axeAndScroll(page, dialog) {
  const above = await axeWithCuts(page);
  if (dialog) return above.map(({ text }) => `axe: ${text}`);
  const places = () => page.evaluate(() => JSON.stringify(window.rehale.probe({ rects: true }).rects));
  const before = await places();
  await press(page, 'End');
  if (await places() === before) return above.map(({ text }) => `axe: ${text}`);  // nothing to scroll
  const boxes = (await strayBoxes(page)).map((stray) => `mirror box, scrolled: ${stray}`);
  const below = await axeWithCuts(page);
  await press(page, 'Home');
  const others = new Map([[above, below], [below, above]]);
  const counts = (list) => list.filter(({ cut }) => !cut || others.get(list).some(({ text }) => text.includes(`data-id="${cut}"`)));
  return [...counts(above), ...counts(below)].map(({ text }) => `axe: ${text}`).concat(boxes);
}

// All of it, and no frame in `rest_ms`. how: {first (nothing was there before), dialog, rest_ms}.
export async function lookOver(page, how = {}) {
  const [began, { frames }] = [Date.now(), await probe(page)];
  const problems = await headingAndFocus(page, how);
  if (!(await page.title()).trim()) problems.push('no title');
  problems.push(...await names(page), ...await sizes(page));
  for (const stray of await strayBoxes(page)) problems.push(`mirror box: ${stray}`);
  const edges = await strayEdges(page);
  if (edges.seen < 4) problems.push(`only ${edges.seen} edges in the picture`);
  for (const stray of edges.stray) problems.push(`drawn edge: ${stray}`);
  await page.waitForTimeout(Math.max(0, (how.rest_ms ?? 1000) - (Date.now() - began)));
  const drawn = (await probe(page)).frames - frames;
  if (drawn > 0) problems.push(`${drawn} frames while nothing was done`);
  return [...problems, ...await axeAndScroll(page, how.dialog)];
}
