// The ways people work the page: mouse, finger, keyboard, and a screen reader's own press. Each finds what it
// wants by role and name, and acts on the element's own box or focus; never on a place of the canvas.
import { clickPoint, drag, find, rest, tapPoint } from './hands.mjs';

// Where a pointer really hits the element; or how far away from the middle of the page it lies.
function pointOn(locator) {
  return locator.evaluate((element) => {
    const { left, top, width, height } = element.getBoundingClientRect();
    for (const share of [0.5, 0.3, 0.7, 0.15, 0.85]) {
      const [x, y] = [left + width / 2, top + height * share];
      const hit = document.elementFromPoint(x, y);
      if (hit !== null && element.contains(hit)) return { x, y };
    }
    return { away: top + height / 2 - innerHeight / 2 };
  });
}

// scroll(px): brings what lies px below the middle nearer to it.
export async function reach(page, locator, scroll) {
  for (let n = 0; n < 8; n += 1) {
    const point = await pointOn(locator);
    if (point.away === undefined) return point;
    await scroll(point.away);
    await rest(page);
  }
  throw new Error(`cannot be brought into view: ${locator}`);
}

async function cardsOf(page) {
  const names = await page.getByRole('button', { name: /^(Pick up|Put it here|Put down)/ }).allTextContents();
  return names.map((name) => name.match(/^Pick up: (.*), now \d+ of \d+$/)?.[1] ?? name);
}

// One card to another place by its own buttons, one place a press.
async function stepCard(way, label, to) {
  for (let cards = await cardsOf(way.page); cards.indexOf(label) !== to; cards = await cardsOf(way.page)) {
    const from = cards.indexOf(label);
    const name = `${from < to ? 'Move down' : 'Move up'}: ${label}, now ${from + 1} of ${cards.length}`;
    await way.press('button', name);
  }
}

// Tap the card, then the place where it goes.
async function carryCard(way, label, to) {
  const cards = await cardsOf(way.page);
  const from = cards.indexOf(label);
  if (from === to) return;
  await way.press('button', `Pick up: ${label}, now ${from + 1} of ${cards.length}`);
  await way.press('button', `Put it here, place ${to + 1} of ${cards.length}: ${cards[to]}`);
}

async function stepNumber(way, name, by) {
  for (let n = 0; n < Math.abs(by); n += 1) await way.press('button', `${by > 0 ? 'More' : 'Less'}: ${name}`);
}

// What every way can do. press(role, name) waits until the page rests; begin(role, name) does not.
function wayOf(page, name, own) {
  const way = {
    page, name, cards: () => cardsOf(page),
    press: async (...target) => { await way.begin(...target); await rest(page); },
    choose: (role, label) => way.press(role, label),
    stepNumber: (label, by) => stepNumber(way, label, by),
    moveCard: (label, to) => stepCard(way, label, to),
  };
  return Object.assign(way, own(way));
}

export const byMouse = (page) => wayOf(page, 'mouse', () => ({
  begin: async (role, name) => {
    const scroll = (px) => page.mouse.wheel(0, px);
    await clickPoint(page, await reach(page, find(page, role, name), scroll));
  },
}));

// Taps; and a finger that draws the page along where something lies out of view (way.swipes counts).
export const byTouch = (page) => wayOf(page, 'touch', (way) => ({
  swipes: 0,
  scroll: async (px) => {
    const { width, height } = page.viewportSize();
    way.swipes += 1;
    const far = Math.max(-0.4, Math.min(0.4, px / height)) * height;
    const at = (share) => ({ x: width / 2, y: height / 2 + far / 2 - far * share });
    await drag(page, [0, 0.2, 0.4, 0.6, 0.8, 1, 1, 1].map(at));
  },
  begin: async (role, name) => tapPoint(page, await reach(page, find(page, role, name), way.scroll)),
  moveCard: (label, to) => carryCard(way, label, to),
}));

const hasFocus = (locator) => locator.evaluate((element) => element === document.activeElement);

async function tabUntil(page, reached) {
  for (let n = 0; n < 80; n += 1) {
    if (await reached()) return;
    await page.keyboard.press('Tab');
  }
  throw new Error('not reached by Tab');
}

// Arrows choose within a group of radios; Space takes the one that has the focus already.
async function chooseByArrows(page, label) {
  const radios = page.getByRole('radio');
  const at = () => radios.evaluateAll((all) => all.indexOf(document.activeElement));
  const wanted = await find(page, 'radio', label).evaluate((element) =>
    [...document.querySelectorAll('input[type=radio]')].indexOf(element));
  await tabUntil(page, async () => (await at()) >= 0);
  const by = wanted - await at();
  if (by === 0) await page.keyboard.press(' ');
  for (let n = 0; n < Math.abs(by); n += 1) await page.keyboard.press(by > 0 ? 'ArrowDown' : 'ArrowUp');
  await rest(page);
}

// Tab, arrows, Enter, Space, Escape; Enter and Space by turns, since both must press.
export const byKeys = (page) => wayOf(page, 'keyboard', (way) => ({
  presses: 0,
  begin: async (role, name) => {
    const locator = find(page, role, name);
    await tabUntil(page, () => hasFocus(locator));
    way.presses += 1;
    await page.keyboard.press(role === 'button' && way.presses % 2 ? 'Enter' : ' ');
  },
  choose: (role, label) => (role === 'radio' ? chooseByArrows(page, label) : way.press(role, label)),
  stepNumber: async (name, by) => {
    const spin = find(page, 'spinbutton', name);
    await tabUntil(page, () => hasFocus(spin));
    for (let n = 0; n < Math.abs(by); n += 1) await page.keyboard.press(by > 0 ? 'ArrowUp' : 'ArrowDown');
    await rest(page);
  },
}));

// As a screen reader, switch or voice control presses: on the element itself, wherever it lies.
export const byReader = (page) => wayOf(page, 'reader', () => ({
  begin: (role, name) => find(page, role, name).evaluate((element) => element.click()),
  stepNumber: async (name, by) => {
    const spin = find(page, 'spinbutton', name);
    await spin.fill(String(Number(await spin.inputValue()) + by * Number(await spin.getAttribute('step'))));
    await spin.press('Enter');
    await rest(page);
  },
}));
