// Cuts the page's WASM in two: what it takes to show the first question, and the rest, which
// comes after it (web/js/later.js). Which functions those are is not listed but seen, at every build: an
// instrumented copy goes that way under node, with the site's own content. A function that was not seen
// and is wanted early is still found: the page then waits for the rest. Checks the content on the way.
// usage: first_part.mjs WASM LOADER SITE WASM_SPLIT: writes SITE/rehale.wasm and SITE/later-HASH.wasm,
// whose name carries what it belongs to; prints that name
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { PageWithoutScreen } from './page_without_screen.mjs';

const [whole, loader, site, wasm_split] = process.argv.slice(2);
const k_families = JSON.parse(readFileSync(path.join(site, 'content/library.json'), 'utf8')).families;

// No more than the compiler uses: with others the parts would not share one table of functions.
const k_features = ['--mvp-features', '--enable-mutable-globals', '--enable-sign-ext'];
const k_seeds = [1, 2, 3, 4, 5, 6];

const split = (...options) => execFileSync(wasm_split, [...k_features, ...options], { stdio: ['ignore', 'ignore', 'inherit'] });
const node_of = (page, id) => page.frame.nodes.find((node) => node.id === id);

// By keyboard and mouse, as the browser and window.rehale.probe() call it.
async function reach_question(page) {
  page.bridge.hear('focus', 'go', 1);
  page.bridge.call('viewport', 1920, 1080, 1);
  page.bridge.hear('redraw', 'resize', 3);
  page.bridge.call('pointer', 0, 0, 100, 100);
  await page.rest();
  page.bridge.text('content_id');
  await page.press('go');
  page.bridge.hear('focus', '', 0);
  await page.rest();
}

// Each kind of question may be the first one.
const k_walks = [
  ...k_families.flatMap((family) => k_seeds.map((seed) => ({
    options: [`family=${family}`, `seed=${seed}`], go: reach_question,
  }))),
  // Picked in the app itself, in another language.
  { options: ['lang=es'], go: async (page) => {
    await page.tap(node_of(page, `devices/${k_families[0]}`), 1);
    page.bridge.call('wheel', -1);
    await page.press('go');
  } },
  // Here before, and they agreed that their settings are kept.
  { options: [`family=${k_families[0]}`, 'seed=2', '#settings=1 ground=dark contrast=yes still=no text=150 hand=left slowly=yes volume=quiet language=en'],
    go: reach_question },
  // What must be told also where nothing more arrives.
  { options: ['seed=none'] },
  { options: [], missing: ['content/text'] },
  { options: [`family=${k_families[0]}`], missing: ['questions'] },
];

async function walk(wasm, { options, missing, go }) {
  const page = new PageWithoutScreen(site, missing);
  await page.open(wasm, loader, options);
  if (go) await go(page);
  if (go && page.frame.screen !== 'question') {
    throw new Error([`with ${options} the page comes to '${page.frame.screen}', not to a question`,
      ...page.frame.nodes.map(({ name }) => name).filter(Boolean)].join('\n  '));
  }
  return page;
}

// The page itself goes through every rule of the content, once and here: it is told which bytes are good.
async function check_content(wasm) {
  const file = path.join(site, 'content/library.json');
  const checked = {};
  for (const family of k_families) {
    const page = await walk(wasm, { options: [`family=${family}`], go: reach_question });
    checked[family] = page.bridge.text('content_id');
  }
  writeFileSync(file, JSON.stringify({ ...JSON.parse(readFileSync(file, 'utf8')), checked }));
}

async function see(instrumented, way) {
  const page = await walk(instrumented, way);
  const room = 1 << 20;
  const at = page.module._rehale_room(room);
  const size = page.exports.__write_profile(at, room);
  return page.module.HEAPU8.slice(at, at + size);
}

const work = mkdtempSync(path.join(tmpdir(), 'rehale-first-part-'));
const at = (name) => path.join(work, name);
try {
  await check_content(readFileSync(whole));
  split('--instrument', whole, '-o', at('seen.wasm'));
  const instrumented = readFileSync(at('seen.wasm'));
  const profiles = [];
  for (const [n, walk] of k_walks.entries()) {
    profiles.push(at(`${n}.profile`));
    writeFileSync(profiles[n], await see(instrumented, walk));
  }
  split('--merge-profiles', ...profiles, '-o', at('all.profile'));
  split('--split', whole, `--profile=${at('all.profile')}`, '--placeholder-namespace=later', '--import-namespace=first',
    '--export-prefix=%', '-o1', at('first.wasm'), '-o2', at('later.wasm'));
  const [first, later] = ['first.wasm', 'later.wasm'].map((name) => readFileSync(at(name)));
  const name = `later-${createHash('sha256').update(first).update(later).digest('hex').slice(0, 12)}.wasm`;
  writeFileSync(path.join(site, 'rehale.wasm'), first);
  writeFileSync(path.join(site, name), later);
  console.log(name);
} finally {
  rmSync(work, { recursive: true });
}
