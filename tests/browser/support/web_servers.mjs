// Debian's nginx (unpacked by ci/lib/nginx.sh) over a folder, with the settings that ci/build --site writes.
import { execFileSync, spawn } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { homedir, tmpdir } from 'node:os';
import path from 'node:path';
import { nginx, nginx_map } from '../../../ci/lib/hosting.mjs';

const k_nginx = path.join(process.env.XDG_CACHE_HOME ?? path.join(homedir(), '.cache'), 'rehale/nginx');

const freePort = () => new Promise((done) => {
  const probe = createServer().listen(0, '127.0.0.1', () => { const { port } = probe.address(); probe.close(() => done(port)); });
});

const settings = (folder, site, port) => `
${process.getuid() === 0 ? 'user root;' : ''}
load_module ${k_nginx}/usr/lib/nginx/modules/ngx_http_brotli_static_module.so;
daemon off; pid ${folder}/pid; error_log ${folder}/error.log;
events {}
http {
  access_log off;
  ${['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi'].map((each) => `${each}_temp_path ${folder}/tmp;`).join(' ')}
  ${nginx_map}
  server { listen 127.0.0.1:${port}; ${nginx(site)} }
}`;

// {url, close}
export async function startNginx(site) {
  const folder = mkdtempSync(path.join(tmpdir(), 'rehale-nginx-'));
  chmodSync(folder, 0o755);
  const port = await freePort();
  mkdirSync(path.join(folder, 'tmp'));
  writeFileSync(path.join(folder, 'nginx.conf'), settings(folder, site, port));
  const words = ['-p', folder, '-c', path.join(folder, 'nginx.conf')];
  const env = { ...process.env, LD_LIBRARY_PATH: `${k_nginx}/usr/lib/x86_64-linux-gnu:${k_nginx}/usr/lib/aarch64-linux-gnu` };
  execFileSync(`${k_nginx}/usr/sbin/nginx`, ['-t', '-q', ...words], { env });
  const server = spawn(`${k_nginx}/usr/sbin/nginx`, words, { env, stdio: 'ignore' });
  const url = `http://127.0.0.1:${port}/`;
  const close = () => {
    server.kill();
    rmSync(folder, { recursive: true, force: true });
  };
  for (let n = 0; n < 100; n += 1) {
    if (await fetch(url).then(() => true, () => false)) return { url, close };
    await new Promise((done) => { setTimeout(done, 50); });
  }
  close();
  throw new Error('nginx does not answer');
}
