// The small server of ci/serve: types, compression, nothing outside its folder, a taken port told.
// Expectations: RFC 9110 (Accept-Encoding, HEAD, 405) and the WebAssembly Web API (application/wasm).
import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, brotliDecompressSync } from 'node:zlib';
import { serve } from '../../ci/lib/serve.mjs';

const k_script = fileURLToPath(new URL('../../ci/lib/serve.mjs', import.meta.url));
const folder = mkdtempSync(path.join(tmpdir(), 'serve-'));
const site = path.join(folder, 'site');
let server;

before(async () => {
  mkdirSync(path.join(site, 'content'), { recursive: true });
  writeFileSync(path.join(site, 'index.html'), '<p>page</p>');
  writeFileSync(path.join(site, 'a.wasm'), 'wasm bytes');
  writeFileSync(path.join(site, 'a.wasm.br'), brotliCompressSync('wasm bytes'));
  writeFileSync(path.join(folder, 'secret.txt'), 'outside');
  mkdirSync(path.join(folder, 'site-beside'));
  writeFileSync(path.join(folder, 'site-beside/secret.txt'), 'outside');
  server = await serve(site);
});
after(() => server.close());

// A raw request: fetch would tidy up the path before sending it.
function ask(target, { method = 'GET', headers = {} } = {}) {
  const { port } = new URL(server.url);
  return new Promise((done, failed) => {
    request({ host: '127.0.0.1', port, path: target, method, headers }, (response) => {
      const parts = [];
      response.on('data', (part) => parts.push(part));
      response.on('end', () => done({ status: response.statusCode, headers: response.headers, body: Buffer.concat(parts) }));
    }).on('error', failed).end();
  });
}

test('the folder itself is its index page, as HTML', async () => {
  const { status, headers, body } = await ask('/?seed=1');
  assert.equal(status, 200);
  assert.match(headers['content-type'], /^text\/html/);
  assert.equal(body.toString(), '<p>page</p>');
});

test('WASM has its own type and comes compressed to who accepts that', async () => {
  const plain = await ask('/a.wasm');
  assert.equal(plain.headers['content-type'], 'application/wasm');
  assert.equal(plain.headers['content-encoding'], undefined);
  const packed = await ask('/a.wasm', { headers: { 'accept-encoding': 'gzip, br' } });
  assert.equal(packed.headers['content-encoding'], 'br');
  assert.equal(packed.headers['content-type'], 'application/wasm');
  assert.equal(brotliDecompressSync(packed.body).toString(), 'wasm bytes');
});

for (const target of ['/../secret.txt', '/%2e%2e/secret.txt', '/..%2fsecret.txt', '/content/../../secret.txt',
  '/../site-beside/secret.txt', '/..%2fsite-beside/secret.txt', '//etc/passwd', '/%00', '/%zz', '/content']) {
  test(`nothing outside the folder: ${target}`, async () => {
    const { status, body } = await ask(target);
    assert.equal(status, 404);
    assert.ok(!body.includes('outside'));
  });
}

test('it is for reading: HEAD has no body, POST is refused', async () => {
  const head = await ask('/a.wasm', { method: 'HEAD' });
  assert.equal(head.status, 200);
  assert.equal(head.body.length, 0);
  assert.equal((await ask('/a.wasm', { method: 'POST' })).status, 405);
});

test('a taken port is told with the way out, and nothing is served', () => {
  const { port } = new URL(server.url);
  const { status, stderr } = spawnSync(process.execPath, [k_script, site, port], { encoding: 'utf8' });
  assert.equal(status, 1);
  assert.match(stderr, new RegExp(`Port ${port} is taken.*ci/serve --port \\d+`));
});

test('ci/serve names a port that is none before it builds anything', () => {
  const command = fileURLToPath(new URL('../../ci/serve', import.meta.url));
  for (const port of ['eighty', '70000', '-1']) {
    assert.throws(() => execFileSync(command, ['--port', port], { stdio: 'pipe' }), /--port wants a number/);
  }
});
