// Debian's nginx and Apache httpd (unpacked by ci/lib/web_servers.sh) over a folder, with the settings that
// ci/build --site writes. Each gives {url, close}.
import { execFileSync, spawn } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { homedir, tmpdir } from 'node:os';
import path from 'node:path';
import { apache, nginx, nginx_map } from '../../../ci/lib/hosting.mjs';

const k_root = path.join(process.env.XDG_CACHE_HOME ?? path.join(homedir(), '.cache'), 'rehale/web-servers');
const k_libraries = ['x86_64', 'aarch64'].map((machine) => `${k_root}/usr/lib/${machine}-linux-gnu`).join(':');

const freePort = () => new Promise((done) => {
  const probe = createServer().listen(0, '127.0.0.1', () => { const { port } = probe.address(); probe.close(() => done(port)); });
});

const nginxSettings = (folder, site, port) => `
${process.getuid() === 0 ? 'user root;' : ''}
load_module ${k_root}/usr/lib/nginx/modules/ngx_http_brotli_static_module.so;
daemon off; pid ${folder}/pid; error_log ${folder}/error.log;
events {}
http {
  access_log off;
  ${['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi'].map((each) => `${each}_temp_path ${folder}/tmp;`).join(' ')}
  ${nginx_map}
  server { listen 127.0.0.1:${port}; ${nginx(site)} }
}`;

const apacheSettings = (folder, site, port) => `
ServerRoot ${folder}
ServerName 127.0.0.1
Listen 127.0.0.1:${port}
PidFile ${folder}/pid
ErrorLog ${folder}/error.log
Mutex file:${folder} default
${['mpm_event', 'authz_core', 'dir', 'mime', 'headers', 'rewrite'].map((name) => `LoadModule ${name}_module ${k_root}/usr/lib/apache2/modules/mod_${name}.so`).join('\n')}
TypesConfig ${folder}/no-types
DocumentRoot ${site}
<Directory ${site}>
Require all granted
Options FollowSymLinks
${apache}
</Directory>
`;

// settings(folder, site, port): the file; words(file, folder): the program's; check: those that only look at the file.
async function start(site, { program, settings, words, check }) {
  const folder = mkdtempSync(path.join(tmpdir(), 'rehale-server-'));
  chmodSync(folder, 0o755);
  mkdirSync(path.join(folder, 'tmp'));
  writeFileSync(path.join(folder, 'no-types'), '');
  const [port, file] = [await freePort(), path.join(folder, 'settings.conf')];
  writeFileSync(file, settings(folder, site, port));
  const env = { ...process.env, LD_LIBRARY_PATH: k_libraries };
  execFileSync(path.join(k_root, program), [...words(file, folder), ...check], { env, stdio: ['ignore', 'ignore', 'pipe'] });
  const server = spawn(path.join(k_root, program), words(file, folder), { env, stdio: 'ignore' });
  const url = `http://127.0.0.1:${port}/`;
  const close = () => {
    server.kill();
    rmSync(folder, { recursive: true, force: true });
  };
  for (let n = 0; n < 100; n += 1) {
    if (await fetch(url).then(() => true, () => false)) return { url, close };
    await new Promise((done) => { setTimeout(done, 50); });
  }
  const complaint = readFileSync(path.join(folder, 'error.log'), 'utf8');
  close();
  throw new Error(`${program} does not answer: ${complaint}`);
}

export const startNginx = (site) => start(site, {
  program: 'usr/sbin/nginx', settings: nginxSettings, words: (file, folder) => ['-p', folder, '-c', file], check: ['-t', '-q'],
});

export const startApache = (site) => start(site, {
  program: 'usr/sbin/apache2', settings: apacheSettings, words: (file) => ['-D', 'FOREGROUND', '-f', file], check: ['-t'],
});
