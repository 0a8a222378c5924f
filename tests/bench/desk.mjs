// The educator's desk with 100,000 invented results in real Chromium: a file dropped and read with progress, stopped on
// the way, memory, the longest the page did not answer, sorting and filtering to the picture; beside the last a plain page's
// script. Pictures go to .build/bench-desk. usage: desk.mjs ROOT
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { closeSync, existsSync, mkdirSync, openSync, readFileSync, readdirSync, renameSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { setOf } from '../../ci/lib/named_set.mjs';
import { serve } from '../../ci/lib/serve.mjs';
import { closePage, k_sizes, launch, openApp, probe } from '../browser/support/browser.mjs';
import { openReading } from '../browser/support/desk.mjs';
import { awaitScreen } from '../browser/support/walk.mjs';
import { byReader } from '../browser/support/ways.mjs';
import { choose_times, plain_times, summary_of } from './desk_times.mjs';
import { table, verdict } from './table.mjs';

const k_results = 100_000, k_people = 72_000;  // two of five come back
const k_slow_results = 5_000, k_slower = 4;    // the same on a slow phone
const k_most_ms = 100, k_most_task_ms = 50;
const k_longest_min = 20;

const mb = (bytes) => `${(bytes / 1024 / 1024).toFixed(1)} MB`;
const s = (ms) => `${(ms / 1000).toFixed(1)} s`;

// A program's words, kept in a file: they need minutes to make and stay the same until the content changes.
function kept(folder, name, program, args) {
  const file = path.join(folder, name), part = `${file}.part`;
  if (!existsSync(file)) {
    const out = openSync(part, 'w');
    execFileSync(program, args, { stdio: ['ignore', out, 'inherit'] });
    closeSync(out);
    renameSync(part, file);
  }
  return readFileSync(file, 'utf8');
}

// Codes of the generator that is committed, for the content of this very page; and what a plain script starts from.
function make_files(root, folder) {
  const content = path.join(setOf(path.join(root, '.build/site')), 'content'), programs = path.join(root, '.build/native/tests');
  const sum = createHash('sha256');
  for (const family of readdirSync(path.join(content, 'families'))) {
    for (const file of ['procedure.json', 'questions.json']) sum.update(readFileSync(path.join(content, 'families', family, file)));
  }
  const id = sum.digest('hex').slice(0, 12);
  const lines = kept(folder, `codes-${id}.txt`, path.join(programs, 'rehale_demo_group'), [content, String(k_people)]).split('\n', k_results);
  if (lines.length < k_results) throw new Error(`only ${lines.length} codes: more people are needed`);
  return { lines, rows: kept(folder, `rows-${id}.csv`, path.join(programs, 'rehale_cohort_bench'), ['--rows', String(k_results)]) };
}

const k_watch = `
  window.longTasks = [];
  new PerformanceObserver((list) => window.longTasks.push(...list.getEntries().map(({ startTime, duration }) => ({ at: startTime, took: duration }))))
    .observe({ type: 'longtask', buffered: true });`;

async function drop(page, lines) {
  await page.evaluate((text) => {
    const data = new DataTransfer();
    data.items.add(new File([text], 'results.txt'));
    document.getElementById('desk-window').dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }));
  }, `${lines.join('\n')}\n`);
}

// A page at the desk that has begun to read; began: performance.now() of the page.
async function begin_reading(browser, url, lines, slower = 1) {
  const page = await openApp(browser, `${url}?x=1#desk`, { calm: true, before: k_watch });
  await openReading(page, byReader(page));
  await drop(page, lines);
  if (slower > 1) await (await page.context().newCDPSession(page)).send('Emulation.setCPUThrottlingRate', { rate: slower });
  const began = await page.evaluate(() => { window.longTasks.length = 0; return performance.now(); });
  await page.getByRole('button', { name: 'Read them' }).click();
  return { page, began };
}

const progress = (page) => page.evaluate(() => document.querySelector('#mirror [data-id="working"]')?.textContent ?? '');
const status = (page) => page.getByRole('status').filter({ hasText: /^Results read: / });

// Looks at it twice a second until all is read: what was said on the way, and the most memory.
async function watch(page, began) {
  const said = new Set();
  let heap = 0, scripts = 0;
  for (let n = 0; n < k_longest_min * 120 && await status(page).count() === 0; n += 1) {
    said.add((await progress(page)).replace(/ .*/s, ''));
    heap = Math.max(heap, (await probe(page)).heapBytes);
    scripts = Math.max(scripts, await page.evaluate(() => performance.memory?.usedJSHeapSize ?? 0));
    await page.waitForTimeout(500);
  }
  const [took, tasks] = await page.evaluate((since) => [performance.now() - since,
    // What lies before is this bench's own: it makes the file.
    window.longTasks.map(({ at, took: long }) => ({ at: at - since, took: long })).filter(({ at }) => at >= 0)], began);
  return { words: await status(page).innerText(), took, said: said.size, heap, scripts, tasks };
}

function reading_rows(kind, results, { words, took, said, heap, scripts, tasks }) {
  if (words !== `Results read: ${results}.`) throw new Error(`the page says "${words}"`);
  const longest = Math.max(0, ...tasks.map((task) => task.took));
  return [
    [`${kind}: file dropped to all added up`, `${s(took)}, ${Math.round(results / took * 1000)} a second`, '', ''],
    [`${kind}: different percentages shown`, `${said}`, '', ''],
    [`${kind}: WASM memory; scripts' memory`, `${mb(heap)}; ${mb(scripts)}`, '', ''],
    [`${kind}: longest without an answer (tasks above ${k_most_task_ms} ms)`, `${Math.round(longest)} ms (${tasks.length})`,
      `<= ${k_most_ms} ms`, verdict(longest <= k_most_ms)],
  ];
}

async function stop_rows(browser, url, lines) {
  const { page } = await begin_reading(browser, url, lines);
  await page.getByText(/^[2-9] % read\./).waitFor({ timeout: 120_000 });
  const took = await page.getByRole('button', { name: 'Stop reading' }).evaluate((button) => new Promise((done) => {
    const began = performance.now();
    button.click();
    const look = () => (document.querySelector('#mirror [data-id="got"]') ? done(performance.now() - began) : requestAnimationFrame(look));
    requestAnimationFrame(look);
  }));
  const read = Number((await status(page).innerText()).match(/\d+/)[0]);
  await closePage(page);
  if (read === 0 || read >= lines.length / 4) throw new Error(`${read} read when it was stopped`);
  return [[`stopped after ${read}: press to what was read, added up`, `${Math.round(took)} ms`, '', '']];
}

async function pictures(page, folder) {
  for (const [name, size] of Object.entries(k_sizes)) {
    await page.setViewportSize(size);
    await page.waitForTimeout(600);
    await page.screenshot({ path: path.join(folder, `group-${name}.png`) });
  }
}

async function table_rows(browser, page, folder, rows_csv) {
  const way = byReader(page);
  await way.press('button', 'See one by one');
  await awaitScreen(page, 'desk-people');
  const plain = await plain_times(browser, rows_csv);
  const narrow = ['Português', 'All languages', 'count'];
  const list = await choose_times(way, { sort: ['Newest first', 'Most to teach first', 'result-0'], filter: narrow });
  await way.press('button', 'Back');
  await awaitScreen(page, 'desk-read');
  await way.press('button', 'See the group');
  await awaitScreen(page, 'desk-group');
  await pictures(page, folder);
  const group = await choose_times(way, { filter: narrow });
  const row = (what, times) => [`${what} to the picture, median (longest)`, summary_of(times).words, `<= ${k_most_ms} ms`,
    verdict(summary_of(times).median <= k_most_ms)];
  return [
    row('list of people: another order', list.sort), row('list of people: a filter', list.filter),
    row('the group: a filter', group.filter),
    ...Object.entries(plain).map(([what, times]) => [`a plain page's script: ${what}`, summary_of(times).words, '', 'beside']),
  ];
}

export async function desk_bench(root) {
  const site = path.join(root, '.build/site'), folder = path.join(root, '.build/bench-desk');
  if (!existsSync(site)) throw new Error('there is no page yet: ci/build site');
  mkdirSync(folder, { recursive: true });
  const { lines, rows } = make_files(root, folder);
  const [server, browser] = [await serve(site), await launch(['--enable-precise-memory-info'], { whole: true, quick: [] })];
  try {
    const slow = await begin_reading(browser, server.url, lines.slice(0, k_slow_results), k_slower);
    const slow_seen = await watch(slow.page, slow.began);
    await closePage(slow.page);
    const stopped = await stop_rows(browser, server.url, lines);
    const { page, began } = await begin_reading(browser, server.url, lines);
    const seen = await watch(page, began);
    writeFileSync(path.join(folder, 'seen.json'), JSON.stringify(seen));
    const good = table(`The desk: ${k_results} results in the page`, [...reading_rows(`${k_results}`, k_results, seen), ...stopped,
      ...reading_rows(`${k_slow_results}, processor ${k_slower} times slower`, k_slow_results, slow_seen)]);
    return table('The desk: sorting and filtering', await table_rows(browser, page, folder, rows)) && good;
  } finally {
    await browser.close();
    await server.close();
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = (await desk_bench(process.argv[2])) ? 0 : 1;
