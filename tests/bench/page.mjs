// What the page costs: bytes, time to the first question, blocking, idleness, memory. Each beside its
// budget or peer, all in this run. usage: page.mjs ROOT [TABLE]
import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { serve } from '../../ci/lib/serve.mjs';
import { launch } from '../browser/support/browser.mjs';
import { dose_rows } from './page_dose.mjs';
import { idle_rows } from './page_idle.mjs';
import { memory_rows } from './page_memory.mjs';
import { start_rows } from './page_start.mjs';
import { make_quiz } from './quiz.mjs';
import { table } from './table.mjs';

export async function page_bench(root, only) {
  const site = path.join(root, '.build/site');
  if (!existsSync(site)) throw new Error('there is no page yet: ci/build site');
  await make_quiz(root, path.join(root, '.build/quiz'));
  const ours = await serve(site);
  const quiz = await serve(path.join(root, '.build/quiz'));
  const browser = await launch([], { whole: true, quick: [] });
  try {
    const parts = {
      'Start (1.6 Mbit/s, 150 ms, processor 4 times slower; medians)': () => start_rows(browser, ours.url, quiz.url),
      'At rest (10 s a screen)': () => idle_rows(browser, ours.url, quiz.url),
      Memory: () => memory_rows(browser, ours.url),
      'Where it goes: step to picture (processor 4 times slower)': () => dose_rows(browser, ours.url),
    };
    let good = true;
    for (const [title, rows] of Object.entries(parts)) {
      if (only && !title.startsWith(only)) continue;
      good = table(title, await rows()) && good; // printed as soon as it is there
    }
    return good;
  } finally {
    await browser.close();
    await Promise.all([ours.close(), quiz.close()]);
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = (await page_bench(process.argv[2], process.argv[3])) ? 0 : 1;
