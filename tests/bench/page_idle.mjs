// Nothing is done: how many frames are drawn, and how much processor goes, on every screen.
import { readFileSync } from 'node:fs';
import { verdict } from './table.mjs';

const k_rest_ms = 10_000;
const k_walk = readFileSync(new URL('./walk.js', import.meta.url), 'utf8');
// "As a static page's": within what two measurements of the static page differ by, and a little.
const k_more_percent = 1;

// Processor time of all of Chromium's processes, in seconds.
async function cpu_seconds(session) {
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  return processInfo.reduce((sum, { cpuTime }) => sum + cpuTime, 0);
}

// Percent of one core while nothing is done.
async function rest(session, page) {
  await page.waitForTimeout(1500);
  const before = await cpu_seconds(session);
  await page.waitForTimeout(k_rest_ms);
  return ((await cpu_seconds(session)) - before) / (k_rest_ms / 1000) * 100;
}

const k_screens = [
  ['choose-device', async () => {}],
  ['look', (page) => press(page, 'look-button')],
  ['finder', async (page) => { await page.reload(); await ready(page); await press(page, 'unknown'); }],
  ['ready', async (page) => { await page.reload(); await ready(page); await press(page, 'devices/spray'); await to(page, 'ready'); }],
  ['where-it-goes', async (page) => { await press(page, 'where'); await to(page, 'where-it-goes'); }],
  ['ready again', async (page) => { await press(page, 'close'); await to(page, 'ready'); }],
  ['question', async (page) => { await press(page, 'go'); await to(page, 'question'); }],
  ['result', (page) => page.evaluate(() => window.walk.answer_all())],
  ['mend', async (page) => { await press(page, 'mend'); await to(page, 'mend'); }],
  ['practice', async (page) => { await press(page, 'try'); await to(page, 'practice'); }],
  ['about', async (page) => { await press(page, 'help'); await to(page, 'about'); }],
];

const press = (page, id) => page.evaluate((name) => window.walk.press(name), id);
const to = (page, name) => page.evaluate((screen) => window.walk.to(screen), name);
const ready = (page) => to(page, 'choose-device');

export async function idle_rows(browser, ours_url, static_url) {
  const session = await browser.newBrowserCDPSession();
  const context = await browser.newContext({ viewport: { width: 360, height: 640 } });
  const page = await context.newPage();
  await page.goto(static_url, { waitUntil: 'load' });
  const still = await rest(session, page);
  await page.addInitScript(k_walk);
  await page.goto(`${ours_url}?seed=1`);
  await ready(page);

  const rows = [['a static page (the quiz)', `${still.toFixed(1)} %`, '', 'beside']];
  for (const [name, go] of k_screens) {
    await go(page);
    const before = await page.evaluate(() => window.rehale.probe().frames);
    const percent = await rest(session, page);
    const frames = (await page.evaluate(() => window.rehale.probe().frames)) - before;
    const still_enough = frames === 0 && percent <= still + k_more_percent;
    rows.push([`screen '${name}'`, `${frames} frames, ${percent.toFixed(1)} %`,
      `0 frames, <= static + ${k_more_percent} %`, verdict(still_enough)]);
  }
  await context.close();
  return rows;
}
