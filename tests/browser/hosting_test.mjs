// The page behind Debian's nginx with the settings that ci/build --site writes: every header by its standard's name,
// compressed files, "not changed", what may be kept for ever; and the app starts there.
import assert from 'node:assert/strict';
import { execFileSync, spawn } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { homedir, tmpdir } from 'node:os';
import path from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { k_headers } from '../../ci/lib/headers.mjs';
import { nginx, nginx_map } from '../../ci/lib/hosting.mjs';
import { closePage, launch, openApp, probe } from './support/browser.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const k_site = path.resolve(process.env.REHALE_SITE ?? path.join(root, '.build/site'));
const k_nginx = path.join(process.env.XDG_CACHE_HOME ?? path.join(homedir(), '.cache'), 'rehale/nginx');
let folder, server, url;

const freePort = () => new Promise((done) => {
  const probe = createServer().listen(0, '127.0.0.1', () => { const { port } = probe.address(); probe.close(() => done(port)); });
});

before(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'rehale-nginx-'));
  chmodSync(folder, 0o755);
  const port = await freePort();
  mkdirSync(path.join(folder, 'tmp'));
  writeFileSync(path.join(folder, 'nginx.conf'), `
${process.getuid() === 0 ? 'user root;' : ''}
load_module ${k_nginx}/usr/lib/nginx/modules/ngx_http_brotli_static_module.so;
daemon off; pid ${folder}/pid; error_log ${folder}/error.log;
events {}
http {
  access_log off;
  ${['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi'].map((each) => `${each}_temp_path ${folder}/tmp;`).join(' ')}
  ${nginx_map}
  server { listen 127.0.0.1:${port}; ${nginx(k_site)} }
}`);
  const words = ['-p', folder, '-c', path.join(folder, 'nginx.conf')];
  const env = { ...process.env, LD_LIBRARY_PATH: `${k_nginx}/usr/lib/x86_64-linux-gnu:${k_nginx}/usr/lib/aarch64-linux-gnu` };
  execFileSync(`${k_nginx}/usr/sbin/nginx`, ['-t', '-q', ...words], { env });
  server = spawn(`${k_nginx}/usr/sbin/nginx`, words, { env, stdio: 'ignore' });
  url = `http://127.0.0.1:${port}/`;
  for (let n = 0; n < 100; n += 1) {
    if (await fetch(url).then(() => true, () => false)) return;
    await new Promise((done) => { setTimeout(done, 50); });
  }
  throw new Error('nginx does not answer');
});
after(() => {
  server?.kill();
  rmSync(folder, { recursive: true, force: true });
});

const later = () => readdirSync(k_site).find((name) => /^later-[0-9a-f]+\.wasm$/.test(name));

test('every header, on every kind of answer', async () => {
  for (const name of ['', 'app.js', 'rehale.wasm', 'content/library.json', 'sw.js', 'manifest.webmanifest', 'not-here']) {
    const { headers, status } = await fetch(url + name);
    assert.equal(status, name === 'not-here' ? 404 : 200, name);
    for (const [header, value] of Object.entries(k_headers)) assert.equal(headers.get(header), value, `${name}: ${header}`);
  }
});

test('the policy lets no inline code and nobody else in', () => {
  const policy = new Map(k_headers['content-security-policy'].split('; ').map((each) => [each.split(' ')[0], each.split(' ').slice(1)]));
  assert.deepEqual(policy.get('default-src'), ["'none'"]);
  assert.deepEqual(policy.get('script-src'), ["'self'", "'wasm-unsafe-eval'"]);
  for (const [name, sources] of policy) {
    if (name.endsWith('-src')) assert.ok(sources.every((each) => ["'none'", "'self'", "'wasm-unsafe-eval'"].includes(each)), `${name}: ${sources}`);
  }
});

test('types, compressed files, "not changed", for ever only what is named by its hash', async () => {
  const types = { '': 'text/html; charset=utf-8', 'rehale.wasm': 'application/wasm', 'app.js': 'text/javascript; charset=utf-8', 'manifest.webmanifest': 'application/manifest+json; charset=utf-8' };
  for (const [name, type] of Object.entries(types)) assert.equal((await fetch(url + name)).headers.get('content-type'), type, name);
  for (const encoding of ['br', 'gzip']) {
    const answer = await fetch(`${url}rehale.wasm`, { headers: { 'accept-encoding': encoding } });
    assert.equal(answer.headers.get('content-encoding'), encoding);
    assert.match(answer.headers.get('vary') ?? '', /accept-encoding/i);
    assert.deepEqual([...new Uint8Array(await answer.arrayBuffer()).slice(0, 4)], [0, 0x61, 0x73, 0x6d]);
  }
  const first = await fetch(`${url}app.js`);
  assert.equal(first.headers.get('cache-control'), 'no-cache');
  const again = await fetch(`${url}app.js`, { headers: { 'if-none-match': first.headers.get('etag') } });
  assert.equal(again.status, 304);
  assert.match((await fetch(url + later())).headers.get('cache-control'), /immutable/);
  assert.equal((await fetch(`${url}app.js`, { method: 'POST' })).status, 405);
});

test('the app starts behind it', async () => {
  const browser = await launch();
  const page = await openApp(browser, `${url}?seed=1`, { keeps: true });
  assert.equal((await probe(page)).screen, 'choose-device');
  assert.deepEqual(page.complaints, []);
  await closePage(page);
  await browser.close();
});
