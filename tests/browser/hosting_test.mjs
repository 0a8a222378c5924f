// The page behind Debian's nginx and Apache httpd with the settings that ci/build --site writes: every header by its standard's name,
// compressed files, "not changed", what may be kept for ever; and the app starts there.
import assert from 'node:assert/strict';
import path from 'node:path';
import { after, before, describe, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { k_headers, k_part_headers } from '../../ci/lib/headers.mjs';
import { setName } from '../../ci/lib/named_set.mjs';
import { closePage, launch, openApp, probe } from './support/browser.mjs';
import { startApache, startNginx } from './support/web_servers.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const k_site = path.resolve(process.env.REHALE_SITE ?? path.join(root, '.build/site'));
const k_set = setName(k_site);

test('the policy lets no inline code and nobody else in', () => {
  const policy = new Map(k_headers['content-security-policy'].split('; ').map((each) => [each.split(' ')[0], each.split(' ').slice(1)]));
  assert.deepEqual(policy.get('default-src'), ["'none'"]);
  assert.deepEqual(policy.get('script-src'), ["'self'", "'wasm-unsafe-eval'"]);
  for (const [name, sources] of policy) {
    if (name.endsWith('-src')) assert.ok(sources.every((each) => ["'none'", "'self'", "'wasm-unsafe-eval'"].includes(each)), `${name}: ${sources}`);
  }
});

for (const [name, start] of [['nginx', startNginx], ['Apache httpd', startApache]]) {
  describe(name, () => {
    let server, url;
    before(async () => {
      server = await start(k_site);
      ({ url } = server);
    });
    after(() => server?.close());

    test('every header, on every kind of answer; parts, which are no documents, say less', async () => {
      for (const name of ['', `${k_set}/app.js`, `${k_set}/rehale.wasm`, `${k_set}/content/library.json`, 'sw.js', 'manifest.webmanifest', 'not-here']) {
        const { headers, status } = await fetch(url + name);
        assert.equal(status, name === 'not-here' ? 404 : 200, name);
        const part = name.startsWith(k_set);
        for (const [header, value] of Object.entries(part ? k_part_headers : k_headers)) assert.equal(headers.get(header), value, `${name}: ${header}`);
        assert.equal(headers.get('content-security-policy') === null, part, name);
      }
    });

    test('types, compressed files, "not changed", for ever only what is named by its hash', async () => {
      const types = {
        '': 'text/html; charset=utf-8', [`${k_set}/rehale.wasm`]: 'application/wasm', [`${k_set}/app.js`]: 'text/javascript; charset=utf-8',
        'manifest.webmanifest': 'application/manifest+json; charset=utf-8',
      };
      for (const [name, type] of Object.entries(types)) assert.equal((await fetch(url + name)).headers.get('content-type'), type, name);
      for (const encoding of ['br', 'gzip']) {
        const answer = await fetch(`${url}${k_set}/rehale.wasm`, { headers: { 'accept-encoding': encoding } });
        assert.equal(answer.headers.get('content-encoding'), encoding);
        assert.match(answer.headers.get('vary') ?? '', /accept-encoding/i);
        assert.deepEqual([...new Uint8Array(await answer.arrayBuffer()).slice(0, 4)], [0, 0x61, 0x73, 0x6d]);
      }
      const first = await fetch(url);
      const again = await fetch(url, { headers: { 'if-none-match': first.headers.get('etag') } });
      assert.equal(again.status, 304);
      for (const name of ['', 'sw.js', 'manifest.webmanifest', 'licences.txt']) assert.equal((await fetch(url + name)).headers.get('cache-control'), 'no-cache', name);
      for (const name of ['app.js', 'rehale.wasm', 'content/text/en.json', 'later/desk.js']) {
        assert.match((await fetch(`${url}${k_set}/${name}`)).headers.get('cache-control'), /immutable/, name);
      }
      assert.equal((await fetch(url, { method: 'POST' })).status, 405);
    });

    test('the app starts behind it', async () => {
      const browser = await launch();
      const page = await openApp(browser, `${url}?seed=1`, { keeps: true });
      assert.equal((await probe(page)).screen, 'choose-device');
      assert.deepEqual(page.complaints, []);
      await closePage(page);
      await browser.close();
    });
  });
}
