// Writes licences.txt into a built page: what of others is in it, under which licence, with the texts. What esbuild took
// from npm must all stand in the list: a package that is new in the page fails the build until somebody has looked.
// usage: licences.mjs SITE PACKAGES IMGUI EMSCRIPTEN FONTS (PACKAGES: written by bundle.mjs)
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const [site, packages, imgui, emscripten, fonts] = process.argv.slice(2);
const k_modules = fileURLToPath(new URL('../node_modules', import.meta.url));

// licence: SPDX. text: a file; without one the text comes with the Debian package that is named.
const k_compiled = [
  { name: 'Dear ImGui', licence: 'MIT', text: path.join(imgui, 'LICENSE.txt') },
  { name: 'nlohmann-json', licence: 'MIT', text: '/usr/share/doc/nlohmann-json3-dev/copyright' },
  { name: 'expected', licence: 'CC0-1.0', text: '/usr/share/doc/libexpected-dev/copyright' },
  { name: 'musl', licence: 'MIT', text: path.join(emscripten, 'system/lib/libc/musl/COPYRIGHT') },
  { name: 'emscripten runtime', licence: 'MIT OR NCSA', from: 'emscripten' },
  { name: 'libc++, compiler-rt', licence: 'Apache-2.0 WITH LLVM-exception', from: 'emscripten' },
  { name: 'Atkinson Hyperlegible Next (font)', licence: 'OFL-1.1', text: path.join(fonts, 'LICENSE_FONT') },
];
const k_npm = {
  '@hpke/core': 'MIT', '@hpke/common': 'MIT', 'qrcode-generator': 'MIT', jsqr: 'Apache-2.0',
};

function fromNpm(name) {
  const { license, version } = JSON.parse(readFileSync(path.join(k_modules, name, 'package.json'), 'utf8'));
  if (k_npm[name] === undefined) throw new Error(`the page holds the npm package ${name} (${license}): look at its licence, then name it in ci/lib/licences.mjs`);
  if (k_npm[name] !== license) throw new Error(`${name} is under ${license}, ci/lib/licences.mjs says ${k_npm[name]}`);
  const text = ['LICENSE', 'LICENSE.md', 'LICENSE.txt'].map((file) => path.join(k_modules, name, file)).find(existsSync);
  return { name: `${name} ${version}`, licence: license, text, from: name };
}

const parts = [...k_compiled, ...JSON.parse(readFileSync(packages, 'utf8')).map(fromNpm)];
const title = ({ name, licence }) => `${name}: ${licence}`;
const body = ({ text, from }) => (text ? readFileSync(text, 'utf8').trim() : `The text comes with the package ${from}.`);
writeFileSync(path.join(site, 'licences.txt'), [
  'What of others is in this page, and under which licence.', '', ...parts.map((part) => `- ${title(part)}`), '',
  ...parts.flatMap((part) => ['='.repeat(60), title(part), '', body(part), '']),
].join('\n'));
