// From the address to the first question that can be answered, on a slow line and processor.
import { readFileSync } from 'node:fs';
import { verdict } from './table.mjs';

const k_rounds = 5;
const k_walk = readFileSync(new URL('./walk.js', import.meta.url), 'utf8');
const k_slow = { offline: false, latency: 150, downloadThroughput: 1.6e6 / 8, uploadThroughput: 750e3 / 8 };
// The budgets.
const k_budget = { bytes: 300_000, share_of_quiz: 0.75, blocking_ms: 100 };

async function load(browser, url, begin) {
  const context = await browser.newContext({ viewport: { width: 360, height: 640 } });
  const page = await context.newPage();
  const client = await context.newCDPSession(page);
  let bytes = 0;
  client.on('Network.loadingFinished', ({ encodedDataLength }) => { bytes += encodedDataLength; });
  await client.send('Network.enable');
  await client.send('Network.emulateNetworkConditions', k_slow);
  await client.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  await page.addInitScript(k_walk);
  await page.goto(url, { waitUntil: 'commit' });
  const walked = begin ? page.evaluate(() => window.walk.begin('spray')) : undefined;
  const first_ms = await page.evaluate(() => window.firstQuestion);
  const bytes_then = bytes;
  await walked;
  await page.waitForTimeout(2000); // long tasks that come right after count, too
  const blocking_ms = await page.evaluate(() => window.longTasks.reduce((sum, ms) => sum + Math.max(0, ms - 50), 0));
  await context.close();
  return { bytes: bytes_then, first_ms, blocking_ms };
}

const median = (list) => list.sort((a, b) => a - b)[list.length >> 1];
const medians = (loads) => Object.fromEntries(['bytes', 'first_ms', 'blocking_ms']
  .map((key) => [key, median(loads.map((each) => each[key]))]));

export async function start_rows(browser, ours_url, quiz_url) {
  const loads = { ours: [], quiz: [] };
  for (let round = 0; round < k_rounds; round += 1) {
    loads.ours.push(await load(browser, `${ours_url}?seed=${round + 1}`, true));
    loads.quiz.push(await load(browser, quiz_url, false));
  }
  const ours = medians(loads.ours), quiz = medians(loads.quiz);
  const share = ours.first_ms / quiz.first_ms;
  const kb = (bytes) => `${(bytes / 1000).toFixed(1)} KB`;
  const ms = (time) => `${time.toFixed(0)} ms`;
  return [
    ['bytes on the wire to the first question', kb(ours.bytes), `<= ${k_budget.bytes / 1000} KB`, verdict(ours.bytes <= k_budget.bytes)],
    ['the quiz page', kb(quiz.bytes), '', 'beside'],
    ['time to the first question, device picked on the way', ms(ours.first_ms), `<= ${k_budget.share_of_quiz} x quiz`,
      `${share.toFixed(2)} x ${verdict(share <= k_budget.share_of_quiz)}`],
    ['the quiz page', ms(quiz.first_ms), '', 'beside'],
    ['total blocking time', ms(ours.blocking_ms), `<= ${k_budget.blocking_ms} ms`, verdict(ours.blocking_ms <= k_budget.blocking_ms)],
    ['the quiz page', ms(quiz.blocking_ms), '', 'beside'],
  ];
}
