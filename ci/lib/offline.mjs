// Writes sw.js into a built page: the service worker with the list of all its files and their sums.
// usage: offline.mjs SITE WEB_JS
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { build } from 'esbuild';

const [site, sources] = process.argv.slice(2);
const files = readdirSync(site, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && !/\.(br|gz)$|^sw\.js$/.test(entry.name))
  .map((entry) => path.relative(site, path.join(entry.parentPath ?? entry.path, entry.name)).split(path.sep).join('/')).sort()
  .map((file) => ({ path: file, sum: `sha256-${createHash('sha256').update(readFileSync(path.join(site, file))).digest('base64')}` }));
const set = `rehale-${createHash('sha256').update(JSON.stringify(files)).digest('hex').slice(0, 16)}`;
await build({
  entryPoints: [path.join(sources, 'sw.js')],
  outfile: path.join(site, 'sw.js'),
  bundle: true,
  minify: true,
  target: ['es2020'],
  define: { SET_NAME: JSON.stringify(set), SET_FILES: JSON.stringify(files) },
  logLevel: 'warning',
});
