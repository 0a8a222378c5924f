// Settings for two common web servers that serve the page's folder: the headers of headers.mjs, compressed files
// first, and what may be kept how long. usage: hosting.mjs SITE OUT
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { k_headers } from './headers.mjs';

// Asked for again each time, and answered "not changed": all but what has its content's hash in its name.
const k_always_asked = 'no-cache', k_for_ever = 'public, max-age=31536000, immutable';

export const nginx = (site) => `# Into a server block of nginx. Compressed files: Debian's libnginx-mod-http-brotli-static; gzip_static is built in.
root ${site};
index index.html;
types {
  text/html html; text/css css; text/javascript js; text/plain txt; application/json json; application/wasm wasm;
  application/manifest+json webmanifest; image/svg+xml svg; image/png png; font/ttf ttf;
}
charset utf-8;
charset_types text/css text/javascript application/json application/manifest+json text/plain;
gzip_static on;
gzip_vary on;
brotli_static on;
etag on;
${Object.entries(k_headers).map(([name, value]) => `add_header ${name} "${value}" always;`).join('\n')}
add_header cache-control $rehale_kept always;
if ($request_method !~ ^(GET|HEAD)$) { return 405; }
location / { try_files $uri $uri/ =404; }
`;

export const nginx_map = `# Beside the server block.
map $uri $rehale_kept {
  default "${k_always_asked}";
  ~^.*/later-[0-9a-f]+\\.wasm$ "${k_for_ever}";
}
`;

export const apache = `# Apache httpd, as .htaccess in the page's folder or in its <Directory>; modules headers, rewrite, mime.
DirectoryIndex index.html
AddType application/wasm .wasm
AddType application/manifest+json .webmanifest
AddType text/javascript .js
AddDefaultCharset utf-8
${Object.entries(k_headers).map(([name, value]) => `Header always set ${name} "${value}"`).join('\n')}
Header set cache-control "${k_always_asked}"
<FilesMatch "^later-[0-9a-f]+\\.wasm$">
  Header set cache-control "${k_for_ever}"
</FilesMatch>
RewriteEngine On
RewriteCond %{HTTP:Accept-Encoding} \\bbr\\b
RewriteCond %{REQUEST_FILENAME}.br -f
RewriteRule ^(.*)$ $1.br [L]
<FilesMatch "\\.br$">
  Header set content-encoding br
  Header append vary accept-encoding
</FilesMatch>
${[['html', 'text/html'], ['js', 'text/javascript'], ['css', 'text/css'], ['json', 'application/json'], ['wasm', 'application/wasm'],
    ['svg', 'image/svg+xml'], ['ttf', 'font/ttf'], ['txt', 'text/plain']]
    .map(([ending, type]) => `<FilesMatch "\\.${ending}\\.br$">\n  ForceType ${type}\n</FilesMatch>`).join('\n')}
`;

if (process.argv[1]?.endsWith('hosting.mjs')) {
  const [site, out] = process.argv.slice(2);
  mkdirSync(out, { recursive: true });
  for (const [name, text] of [['nginx.conf', nginx(path.resolve(site))], ['nginx-map.conf', nginx_map], ['apache.conf', apache]]) {
    writeFileSync(path.join(out, name), text);
  }
}
