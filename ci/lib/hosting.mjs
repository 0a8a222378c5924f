// Settings for two common web servers that serve the page's folder: the headers of headers.mjs, compressed files
// first, and what may be kept how long. usage: hosting.mjs SITE OUT
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { k_headers, k_part_headers } from './headers.mjs';

// Asked for again each time, and answered "not changed": all but the folder named by what is in it (named_set.mjs).
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
location ~ /set-[0-9a-f]+/ {
  ${Object.entries(k_part_headers).map(([name, value]) => `add_header ${name} "${value}" always;`).join('\n  ')}
  add_header cache-control $rehale_kept always;
  try_files $uri =404;
}
`;

export const nginx_map = `# Beside the server block.
map $uri $rehale_kept {
  default "${k_always_asked}";
  ~/set-[0-9a-f]+/ "${k_for_ever}";
}
`;

const k_types = Object.entries({
  html: 'text/html', css: 'text/css', js: 'text/javascript', txt: 'text/plain', json: 'application/json', webmanifest: 'application/manifest+json',
}).map(([ending, type]) => [ending, `${type}; charset=utf-8`]);
k_types.push(['wasm', 'application/wasm'], ['svg', 'image/svg+xml'], ['ttf', 'font/ttf'], ['png', 'image/png']);

// A file that is there compressed too: the request is answered from that one, with the type of the file itself.
const compressed = (encoding, ending) => `RewriteCond %{HTTP:Accept-Encoding} \\b${encoding}\\b
RewriteCond %{REQUEST_FILENAME} !\\.(br|gz)$
RewriteCond %{REQUEST_FILENAME}.${ending} -f
RewriteRule ^(.*)$ $1.${ending} [L]
<FilesMatch "\\.${ending}$">
  Header set content-encoding ${encoding}
</FilesMatch>
${k_types.map(([name, type]) => `<FilesMatch "\\.${name}\\.${ending}$">\n  ForceType "${type}"\n</FilesMatch>`).join('\n')}`;

export const apache = `# Apache httpd, as .htaccess in the page's folder or in its <Directory>; modules dir, headers, mime, rewrite.
DirectoryIndex index.html
${k_types.map(([name, type]) => `AddType "${type}" .${name}`).join('\n')}
${Object.entries(k_headers).map(([name, value]) => `Header always set ${name} "${value}"`).join('\n')}
Header set cache-control "${k_always_asked}"
<If "%{REQUEST_URI} =~ m#/set-[0-9a-f]+/#">
  Header set cache-control "${k_for_ever}"
${Object.keys(k_headers).filter((name) => !(name in k_part_headers)).map((name) => `  Header always unset ${name}`).join('\n')}
</If>
Header merge vary accept-encoding
RewriteEngine On
RewriteCond %{REQUEST_METHOD} !^(GET|HEAD)$
RewriteRule ^ - [R=405,L]
${compressed('br', 'br')}
${compressed('gzip', 'gz')}
`;

if (process.argv[1]?.endsWith('hosting.mjs')) {
  const [site, out] = process.argv.slice(2);
  mkdirSync(out, { recursive: true });
  for (const [name, text] of [['nginx.conf', nginx(path.resolve(site))], ['nginx-map.conf', nginx_map], ['apache.conf', apache]]) {
    writeFileSync(path.join(out, name), text);
  }
}
