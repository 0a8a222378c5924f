// Writes licences.txt into a built page: what of others is in it, under which licence, with the texts. What esbuild took
// from npm must all stand in the list: a package that is new in the page fails the build until somebody has looked.
// usage: licences.mjs SITE PACKAGES IMGUI EMSCRIPTEN FONTS (PACKAGES: written by bundle.mjs)
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const [site, packages, imgui, emscripten, fonts] = process.argv.slice(2);
const k_modules = fileURLToPath(new URL('../node_modules', import.meta.url));

// From the Debian package's list (DEP-5): who holds what under which terms for these files, and the licences themselves.
function ofEmscripten(files, licences) {
  const list = path.join(emscripten, '../doc/emscripten/copyright');
  if (!existsSync(list)) return 'The text comes with Emscripten.';  // one that was put on PATH by hand has no such list
  const parts = readFileSync(list, 'utf8').split('\n\n');
  const find = (what, holds) => parts.find(holds) ?? (() => { throw new Error(`emscripten's list of licences has no ${what}`); })();
  return [
    ...files.map((file) => find(`files ${file}`, (part) => part.startsWith('Files:\n') && part.split('\n').includes(file))),
    ...licences.map((name) => find(`licence ${name}`, (part) => part.startsWith(`License: ${name}\n`))),
  ].join('\n\n');
}

// licence: SPDX. words: the terms; text: a file with (more of) them.
const k_compiled = [
  { name: 'Dear ImGui', licence: 'MIT', text: path.join(imgui, 'LICENSE.txt') },
  { name: 'nlohmann-json', licence: 'MIT', text: '/usr/share/doc/nlohmann-json3-dev/copyright' },
  { name: 'expected', licence: 'CC0-1.0', text: '/usr/share/doc/libexpected-dev/copyright' },
  { name: 'musl', licence: 'MIT', text: path.join(emscripten, 'system/lib/libc/musl/COPYRIGHT') },
  { name: 'emscripten runtime', licence: 'MIT OR NCSA', words: ofEmscripten([' *'], ['Expat']) },
  { name: 'libc++, libc++abi, compiler-rt', licence: 'Apache-2.0 WITH LLVM-exception', text: '/usr/share/common-licenses/Apache-2.0',
    words: ofEmscripten([' system/lib/libcxx/*', ' system/lib/libcxxabi/*', ' system/lib/compiler-rt/*'], []) },
  { name: 'Atkinson Hyperlegible Next (font)', licence: 'OFL-1.1', text: path.join(fonts, 'LICENSE_FONT') },
];
const k_npm = {
  '@hpke/core': 'MIT', '@hpke/common': 'MIT', 'qrcode-generator': 'MIT', jsqr: 'Apache-2.0',
};

// A package without a file of its terms says at the head of its script whose it is; MIT's words are the same everywhere.
function headOf(name, script, licence) {
  const head = /^(\/\/.*\n)+/.exec(readFileSync(path.join(k_modules, name, script), 'utf8'))?.[0] ?? '';
  if (licence !== 'MIT' || !/copyright/i.test(head)) throw new Error(`the npm package ${name} comes without its licence's text`);
  return `${head.replace(/^\/\/-*/gm, '').trim()}\n\n${ofEmscripten([], ['Expat'])}`;
}

function fromNpm(name) {
  const { license, module, version } = JSON.parse(readFileSync(path.join(k_modules, name, 'package.json'), 'utf8'));
  if (k_npm[name] === undefined) throw new Error(`the page holds the npm package ${name} (${license}): look at its licence, then name it in ci/lib/licences.mjs`);
  if (k_npm[name] !== license) throw new Error(`${name} is under ${license}, ci/lib/licences.mjs says ${k_npm[name]}`);
  const text = ['LICENSE', 'LICENSE.md', 'LICENSE.txt'].map((file) => path.join(k_modules, name, file)).find(existsSync);
  return { name: `${name} ${version}`, licence: license, text, words: text ? '' : headOf(name, module, license) };
}

const parts = [...k_compiled, ...JSON.parse(readFileSync(packages, 'utf8')).map(fromNpm)];
const title = ({ name, licence }) => `${name}: ${licence}`;
const body = ({ words, text }) => [words, text && readFileSync(text, 'utf8').trim()].filter(Boolean).join('\n\n');
writeFileSync(path.join(site, 'licences.txt'), [
  'What of others is in this page, and under which licence.', '', ...parts.map((part) => `- ${title(part)}`), '',
  ...parts.flatMap((part) => ['='.repeat(60), title(part), '', body(part), '']),
].join('\n'));
