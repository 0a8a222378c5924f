// Two hundred runs in one tab, over all families: the WASM heap must stay small and flat.
import { readFileSync } from 'node:fs';
import { verdict } from './table.mjs';

const k_runs = 200, k_warm_runs = 20;
const k_most_bytes = 32 * 1024 * 1024;
const k_families = ['spray', 'powder-lever', 'powder-cover', 'soft-mist'];
const k_walk = readFileSync(new URL('./walk.js', import.meta.url), 'utf8');

export async function memory_rows(browser, url) {
  const context = await browser.newContext({ viewport: { width: 320, height: 480 } });
  const page = await context.newPage();
  await page.addInitScript(k_walk);
  await page.goto(`${url}?seed=7`);
  const heap = () => page.evaluate(() => window.rehale.probe().heapBytes);
  let warm = 0, answers = 0;
  for (let run = 0; run < k_runs; run += 1) {
    answers += await page.evaluate(async ([family, nth]) => {
      await window.walk.begin(family);
      let given = 0;
      await window.walk.answer_all((n, count) => { given += 1; return (nth + n) % (count + 1) - 1; });
      await window.walk.press('again');
      await window.walk.to('ready');
      await window.walk.press('back');
      await window.walk.to('choose-device');
      return given;
    }, [k_families[run % k_families.length], run]);
    if (run + 1 === k_warm_runs) warm = await heap();
  }
  const end = await heap();
  await context.close();
  const mb = (bytes) => `${(bytes / 1024 / 1024).toFixed(1)} MB`;
  return [
    [`WASM heap after ${k_runs} runs (${answers} picks)`, mb(end), `<= ${mb(k_most_bytes)}`, verdict(end <= k_most_bytes)],
    [`the same after ${k_warm_runs} runs`, mb(warm), 'no less', verdict(end === warm)],
  ];
}
