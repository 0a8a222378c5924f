// Writes the whole page as one HTML file that opens from a disk: scripts and styles inside, everything else packed
// (gzip, base64) in a block of data that web/js/single.js unpacks. usage: single.mjs SITE WEB LOADER WASM OUT
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { setName } from './named_set.mjs';

const k_most_bytes = 1_500_000;  // the "≤ 1.5 MB"
const [site, web, loader, wasm, out] = process.argv.slice(2);
const set = setName(site);
const read = (...parts) => readFileSync(path.join(...parts));

// What is asked for by name while the page runs; the module in one part, since it need not come in two.
function pack() {
  const names = readdirSync(path.join(site, set), { recursive: true }).map(String)
    .filter((name) => /^(content|fonts)\/.*\.(json|txt|ttf)$/.test(name) && !name.endsWith('.schema.json')).sort();
  const files = [['rehale.wasm', readFileSync(wasm)], ...names.map((name) => [name, read(site, set, name)])];
  const list = Buffer.from(JSON.stringify(files.map(([name, bytes]) => [name, bytes.length])));
  const length = Buffer.alloc(4);
  length.writeUInt32LE(list.length);
  return gzipSync(Buffer.concat([length, list, ...files.map(([, bytes]) => bytes)]), { level: 9 }).toString('base64');
}

async function scripts(folder) {
  const here = {
    name: 'all in one',
    setup({ onResolve }) {
      onResolve({ filter: /^\.\/later\// }, (args) => ({ path: path.join(web, 'js', path.basename(args.path)) }));
      const instead = { 'fetch_text.js': 'single_files.js', 'style_sheet.js': 'single_style_sheet.js' };
      onResolve({ filter: /^\.\/(fetch_text|style_sheet)\.js$/ }, (args) => ({ path: path.resolve(web, 'js', instead[path.basename(args.path)]) }));
    },
  };
  await build({
    entryPoints: [path.join(web, 'js/single.js')], outfile: path.join(folder, 'app.js'), bundle: true, minify: true, format: 'iife',
    target: ['es2020'], alias: { 'rehale-wasm': path.resolve(loader) }, nodePaths: [fileURLToPath(new URL('../node_modules', import.meta.url))],
    define: { LATER_FILE: '""', 'import.meta.url': 'document.baseURI' }, plugins: [here], logLevel: 'warning',
  });
  return { app: read(folder, 'app.js').toString().replaceAll('</script', '<\\/script'), styles: read(site, set, 'app.css').toString() + read(folder, 'app.css') };
}

const sum = (text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

function html({ app, styles }, boot, files) {
  const policy = `default-src 'none'; script-src ${sum(boot)} ${sum(app)} 'wasm-unsafe-eval'; style-src ${sum(styles)}; img-src data:; `
    + "base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'; trusted-types rehale";
  const icon = `data:image/svg+xml;base64,${read(site, 'favicon.svg').toString('base64')}`;
  const put = (page, what, text) => {
    if (!page.includes(what)) throw new Error(`index.html has no ${what}`);
    return page.replace(what, () => text);
  };
  let page = read(site, 'index.html').toString().replaceAll(`"${set}/`, '"').replace(/<link rel="(preload|manifest)"[^>]*>\n/g, '');
  page = put(page, '<meta charset="utf-8">', `<meta charset="utf-8">\n<meta http-equiv="content-security-policy" content="${policy}">`);
  page = put(page, '<script src="boot.js"></script>', `<script>${boot}</script>`);
  page = put(page, '<link rel="stylesheet" href="app.css">', `<style>${styles}</style>`);
  page = put(page, 'href="favicon.svg"', `href="${icon}"`);
  page = put(page, '<script src="app.js" type="module"></script>', '');
  return put(page, '</body>', `<script type="application/gzip" id="files">${files}</script>\n<script>${app}</script>\n</body>`);
}

const folder = mkdtempSync(path.join(tmpdir(), 'rehale-single-'));
const text = html(await scripts(folder), read(site, set, 'boot.js').toString(), pack());
rmSync(folder, { recursive: true });
writeFileSync(out, text);
console.log(`${out}: ${text.length} bytes`);
if (text.length > k_most_bytes) {
  console.error(`more than ${k_most_bytes}`);
  process.exitCode = 1;
}
