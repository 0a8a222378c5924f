// "Where it goes": from a press on a stepper to the new picture, the processor 4 times slower.
import { readFileSync } from 'node:fs';
import { verdict } from './table.mjs';

const k_walk = readFileSync(new URL('./walk.js', import.meta.url), 'utf8');
const k_most_ms = 50, k_slower = 4, k_steps = 24;

// Milliseconds until the frame that shows the step has been drawn and told: the number of the stepper, which
// goes to the mirror with the same frame as the dots.
const step = (page, id, spin) => page.evaluate(([button, number]) => new Promise((done) => {
  const told = () => document.querySelector(`[data-id="${number}"]`).value;
  const [before, began] = [told(), performance.now()];
  document.querySelector(`[data-id="${button}"]`).click();
  const look = () => (told() === before ? requestAnimationFrame(look) : done(performance.now() - began));
  requestAnimationFrame(look);
}), [id, spin]);

export async function dose_rows(browser, url) {
  const context = await browser.newContext({ viewport: { width: 360, height: 640 } });
  const page = await context.newPage();
  await page.addInitScript(k_walk);
  await page.goto(`${url}?seed=1`);
  const walk = (what, ...args) => page.evaluate(([name, list]) => window.walk[name](...list), [what, args]);
  await walk('to', 'choose-device');
  await walk('press', 'devices/spray');
  await walk('to', 'ready');
  await walk('press', 'where');
  await walk('to', 'where-it-goes');
  const client = await context.newCDPSession(page);
  await client.send('Emulation.setCPUThrottlingRate', { rate: k_slower });
  const rows = [];
  for (const spin of ['press', 'pace', 'hold']) {
    const times = [];
    for (let n = 0; n < k_steps; n += 1) {
      times.push(await step(page, `${spin}/${n % 4 < 2 ? 'less' : 'more'}`, spin));
      await page.waitForTimeout(120);
    }
    times.sort((a, b) => a - b);
    const [median, slow] = [times[k_steps / 2], times[Math.floor(k_steps * 0.9)]];
    rows.push([`stepper '${spin}', median (9 of 10 within)`, `${median.toFixed(0)} ms (${slow.toFixed(0)})`,
      `<= ${k_most_ms} ms`, verdict(median <= k_most_ms)]);
  }
  await context.close();
  return rows;
}
