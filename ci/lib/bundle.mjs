// Bundles web/js (boot.js apart: it must answer when nothing else does) and Emscripten's loader into one small script. usage: bundle.mjs ENTRY LOADER OUT [LATER]; beside OUT goes packages.json: the npm packages in it
// LATER: the file of the module's second part, where there is one. The entry imports the loader as 'rehale-wasm'.
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const [entry, loader, out, later = ''] = process.argv.slice(2);
const k_seen = { metafile: true };
const first = await build({
  ...k_seen,
  entryPoints: [entry],
  outfile: out,
  bundle: true,
  minify: true,
  format: 'esm',
  target: ['es2020'],
  alias: { 'rehale-wasm': path.resolve(loader) },
  external: ['./later/*'],
  define: { LATER_FILE: JSON.stringify(later) },
  logLevel: 'warning',
});
// Fetched when first asked for or after the start (web/js/asked.js, aloud.js); in a folder of its own, so that no page starts with it.
// What these fetch in turn stays a part of its own.
const packages = fileURLToPath(new URL('../node_modules', import.meta.url));
const others = await build({
  ...k_seen,
  entryPoints: ['hand_over.js', 'sealing.js', 'desk.js', 'read_aloud.js', 'keep.js', 'kiosk.js', 'kiosk_plain.js', 'scan.js', 'qr_search.js'].map((name) => path.join(path.dirname(entry), name)),
  nodePaths: [packages],
  outdir: path.join(path.dirname(out), 'later'),
  external: ['./scan.js', './qr_search.js'],
  bundle: true,
  minify: true,
  format: 'esm',
  target: ['es2020'],
  logLevel: 'warning',
});
await build({
  entryPoints: [path.join(path.dirname(entry), 'boot.js')],
  outfile: path.join(path.dirname(out), 'boot.js'),
  minify: true,
  target: ['es5'],
  logLevel: 'warning',
});

const package_of = (file) => /node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(file)?.[1];
const taken = [first, others].flatMap(({ metafile }) => Object.values(metafile.outputs))
  .flatMap(({ inputs }) => Object.entries(inputs).filter(([, { bytesInOutput }]) => bytesInOutput > 0).map(([file]) => package_of(file)));
writeFileSync(path.join(path.dirname(out), 'packages.json'), JSON.stringify([...new Set(taken.filter(Boolean))].sort()));
