// What one small machine serves: nginx with our settings on loopback under wrk, each file beside an empty one in the same
// run. Loopback has no line: it says what the processor can, not what a network carries. usage: serving.mjs SITE
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setName } from '../../ci/lib/named_set.mjs';
import { first_load } from '../../ci/lib/weigh.mjs';
import { startNginx } from '../browser/support/web_servers.mjs';
import { table } from './table.mjs';

const k_seconds = 5, k_open = 32;
const [site] = process.argv.slice(2);

// Requests and bytes a second.
function load(url) {
  const words = execFileSync('wrk', ['-t1', `-c${k_open}`, `-d${k_seconds}s`, '-H', 'accept-encoding: br', url], { encoding: 'utf8' });
  const [, requests] = /Requests\/sec:\s+([\d.]+)/.exec(words);
  const [, amount, unit] = /Transfer\/sec:\s+([\d.]+)([KMG]?)B/.exec(words);
  if (/Non-2xx/.test(words)) throw new Error(`${url}: ${words}`);
  return { requests: Number(requests), bytes: Number(amount) * { '': 1, K: 1024, M: 1024 ** 2, G: 1024 ** 3 }[unit] };
}

// Sizes of what the service worker keeps, as they travel.
function all_files(folder) {
  const names = readdirSync(folder, { recursive: true }).map(String);
  const travels = (name) => (names.includes(`${name}.br`) ? `${name}.br` : name);
  return names.filter((name) => !/\.(br|gz)$/.test(name) && statSync(path.join(folder, name)).isFile())
    .map((name) => statSync(path.join(folder, travels(name))).size);
}

const folder = mkdtempSync(path.join(tmpdir(), 'rehale-bench-'));
cpSync(site, folder, { recursive: true });
writeFileSync(path.join(folder, 'empty.txt'), '');
const server = await startNginx(folder);
try {
  const empty = load(`${server.url}empty.txt`);
  const first = first_load(site).reduce((sum, { bytes }) => sum + bytes, 0);
  const set = setName(site), later = readdirSync(path.join(site, set)).find((name) => /^later-.*\.wasm$/.test(name));
  const rows = [['an empty file', `${empty.requests.toFixed(0)} a second`, '', '']];
  const rate = new Map();
  for (const name of ['', ...['app.js', 'rehale.wasm', later].map((each) => `${set}/${each}`)]) {
    const now = load(server.url + name);
    rate.set(name, now.requests);
    rows.push([name || 'index.html', `${now.requests.toFixed(0)} a second, ${(now.bytes / 1024 ** 2).toFixed(0)} MB/s`,
      `${(now.requests / empty.requests).toFixed(2)} of an empty one`, '']);
  }
  // A first visit takes all files, since the page keeps them for use without a network; those not measured count as app.js.
  const files = all_files(site);
  const bytes = files.reduce((sum, size) => sum + size, 0);
  const seconds = [...rate.values()].reduce((sum, each) => sum + 1 / each, 0) + (files.length - rate.size) / rate.get(`${set}/app.js`);
  rows.push(['to the first question', `${(first / 1000).toFixed(0)} KB`, '', '']);
  rows.push(['a whole first visit', `${files.length} files, ${(bytes / 1000).toFixed(0)} KB`, '', '']);
  rows.push(['first visits, by the processor', `${(1 / seconds).toFixed(0)} a second`, '', '']);
  rows.push(['first visits, by a line of 1 Gbit/s', `${(125e6 / bytes).toFixed(0)} a second`, '', '']);
  table('Serving, one connection pool on loopback', rows);
} finally {
  server.close();
  rmSync(folder, { recursive: true, force: true });
}
