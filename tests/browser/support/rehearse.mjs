// A run-through with a clock that only moves when told (Playwright's page.clock: performance.now, frames and
// timers of the page). What is pressed is found by role and name alone.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const k_assets = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../../assets/families');
// More than any guard against echoes and the grace for a finger that slips; a keyboard has neither.
const k_settle_ms = { keys: 100, touch: 600, hold: 600 };
const read = (family, file) => JSON.parse(readFileSync(path.join(k_assets, family, file), 'utf8'));

// {name, once: [{id, label, aim_s, breath}]}: the wanted steps of one dose, from the content.
export function stepsOf(family) {
  const { run_through: run, criteria } = read(family, 'procedure.json');
  const texts = read(family, 'text.en.json');
  const aim = (id) => {
    const timed = run.timed.find(({ measure, steps }) => measure === 'lasts' && steps.includes(id));
    const target = timed && criteria.find((one) => one.id === timed.criterion).target.filter((n) => n !== null);
    return target ? target.reduce((sum, n) => sum + n, 0) / target.length : 2;
  };
  const once = run.once.map((id) => {
    const step = run.steps.find(({ action }) => action === id);
    return { id, label: texts.steps?.[id] ?? texts.actions[id].label, s: step.timed ? aim(id) : 0, ends: Boolean(step.ends) };
  });
  return { name: texts.name, once };
}

export const withClock = { route: (page) => page.clock.install() };

// way: 'keys' (focus moves by Tab, Enter presses), 'touch', 'hold' (timed pads are held by the mouse).
export function rehearser(page, way) {
  const button = (name) => page.getByRole('button', { name, exact: true });
  const middle = async (name) => {
    const box = await button(name).boundingBox();
    return [box.x + box.width / 2, box.y + box.height / 2];
  };
  const settle = k_settle_ms[way];
  const pass = (ms) => page.clock.runFor(ms);
  const tabTo = async (name) => {
    for (let n = 0; n < 40; n += 1) {
      const focused = await page.evaluate(() => document.activeElement?.ariaLabel ?? document.activeElement?.textContent);
      if (focused === name) return;
      await page.keyboard.press('Tab');
    }
    throw new Error(`Tab never came to ${name}`);
  };
  const press = async (name) => {
    await button(name).waitFor();
    if (way === 'keys') {
      await tabTo(name);
      await page.keyboard.press('Enter');
    } else if (way === 'touch') {
      await page.touchscreen.tap(...await middle(name));
    } else {
      await page.mouse.click(...await middle(name));
    }
    await pass(settle);
  };
  // What lasts, for s seconds; `within`: pressed so many seconds into it.
  const last = async (name, s, within) => {
    if (way === 'hold' && !within) {
      await page.mouse.move(...await middle(name));
      await page.mouse.down();
      await pass(s * 1000);
      await page.mouse.up();
      return pass(settle);
    }
    await press(name);
    let left = s * 1000 - settle;
    if (within) {
      await pass(within.at_s * 1000 - settle);
      await press(within.label);
      left -= within.at_s * 1000;
    }
    await pass(left);
    return press(`Stop: ${name}`);
  };
  // From the page's start to the first pads, the clock standing still.
  const begin = async (family, picks = []) => {
    await page.clock.pauseAt(Date.now() + 60_000);
    await press(family);
    for (let n = 0; n < 100 && await button('Do a timed run-through').count() === 0; n += 1) {
      await new Promise((done) => { setTimeout(done, 50); });  // the family's files are on their way
      await pass(50);
    }
    await press('Do a timed run-through');
    for (const pick of picks) {
      await page.getByRole('checkbox', { name: pick, exact: true }).focus();
      await page.keyboard.press('Space');
      await pass(settle);
    }
    await press('Start');
  };
  const takes = async () => JSON.parse(await page.evaluate(() => window.rehale.exportRun())).rehearsals;
  return { press, last, begin, pass, takes, button };
}

// All wanted steps done as they should be; change: {id: {s, at_s}} does one otherwise, {id: null} leaves it out.
export async function actOut(person, steps, change = {}) {
  const press = steps.find(({ id }) => id === 'press');
  for (const { id, label, s, ends } of steps) {
    const other = id in change ? change[id] : {};
    if (other === null || id === 'press') continue;
    const within = ends && press && change.press !== null && { label: press.label, at_s: change.press?.at_s ?? 0.8 };
    if (s > 0) await person.last(label, other.s ?? s, within || undefined);
    else await person.press(label);
  }
}
