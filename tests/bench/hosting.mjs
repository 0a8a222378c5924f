// What one small machine serves: nginx with our settings on loopback under wrk, each file beside an empty one in the same
// run. Loopback has no line: it says what the processor can, not what a network carries. usage: hosting.mjs SITE
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { first_load } from '../../ci/lib/weigh.mjs';
import { startNginx } from '../browser/support/nginx.mjs';
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

const folder = mkdtempSync(path.join(tmpdir(), 'rehale-bench-'));
cpSync(site, folder, { recursive: true });
writeFileSync(path.join(folder, 'empty.txt'), '');
const server = await startNginx(folder);
try {
  const empty = load(`${server.url}empty.txt`);
  const first = first_load(site).reduce((sum, { bytes }) => sum + bytes, 0);
  const later = readdirSync(site).find((name) => /^later-.*\.wasm$/.test(name));
  const rows = [['an empty file', `${empty.requests.toFixed(0)} a second`, '', '']];
  let slowest = Infinity;
  for (const name of ['', 'app.js', 'rehale.wasm', later]) {
    const now = load(server.url + name);
    slowest = Math.min(slowest, now.bytes);
    rows.push([name || 'index.html', `${now.requests.toFixed(0)} a second, ${(now.bytes / 1024 ** 2).toFixed(0)} MB/s`,
      `${(now.requests / empty.requests).toFixed(2)} of an empty one`, '']);
  }
  rows.push(['first visits', `${(slowest / first).toFixed(0)} a second at ${(first / 1024).toFixed(0)} KB each, at the slowest rate above`, '', '']);
  table('Serving, one connection pool on loopback', rows);
} finally {
  server.close();
  rmSync(folder, { recursive: true, force: true });
}
