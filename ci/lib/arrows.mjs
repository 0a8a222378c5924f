// Arrows between folders only go down: reads every #include of the tree and fails on one that does not.
// usage: arrows.mjs ROOT
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

// A folder may include itself and what stands after it here.
const k_below = {
  'core/base': [],
  'core/catalog': ['core/base'],
  'core/procedure': ['core/catalog', 'core/base'],
  'core/mastery': ['core/base'],
  'core/dose': ['core/base'],
  'core/rehearsal': ['core/dose', 'core/mastery', 'core/procedure', 'core/catalog', 'core/base'],
  'core/check': ['core/mastery', 'core/procedure', 'core/catalog', 'core/base'],
  'core/recheck': ['core/mastery', 'core/base'],
  'core/advice': ['core/check', 'core/dose', 'core/recheck', 'core/mastery', 'core/procedure', 'core/catalog', 'core/base'],
  'core/supply': ['core/catalog', 'core/base'],
  'core/cohort': ['core/check', 'core/mastery', 'core/procedure', 'core/catalog', 'core/base'],
  'core/exchange': ['core/advice', 'core/cohort', 'core/dose', 'core/recheck', 'core/supply', 'core/check',
    'core/rehearsal', 'core/mastery', 'core/procedure', 'core/catalog', 'core/base'],
  'web/shell': ['core/base'],
  'web/kit': ['web/shell', 'core/base'],
  'web/screens': ['web/kit', 'web/shell', 'core'],
  web: ['web', 'core'],
  tests: ['tests', 'web', 'core'],
};
// Headers from outside, and the only folders that may know them.
const k_outside = [
  [/^(imgui|backends\/imgui)/, ['web/kit', 'web/shell', 'web', 'tests']],
  [/^(emscripten|GLES|webgl|html5)/, ['web/shell']],
  [/^nlohmann/, ['core/catalog', 'core/exchange', 'tests']],
  [/^(iostream|fstream|sstream|filesystem|chrono|thread|random|regex|ctime|mutex)$/, ['tests']],
  [/^gtest/, ['tests']],
];

const folder_of = (file) => (file.startsWith('tests/') ? 'tests' : path.dirname(file));

function trouble(folder, header) {
  const outside = k_outside.find(([form]) => form.test(header));
  if (outside) return outside[1].includes(folder) ? '' : `only ${outside[1].join(', ')} may know <${header}>`;
  const target = header.startsWith('tests/') ? 'tests' : path.dirname(header);
  if (!/^(core|web|tests)(\/|$)/.test(target) || target === folder) return '';
  const allowed = (k_below[folder] ?? []).some((below) => target === below || target.startsWith(`${below}/`));
  return allowed ? '' : `${folder} may not know ${target}`;
}

// [{file, line, says}] for all that points up.
export function find_arrows(root) {
  const found = [];
  const walk = (folder) => {
    for (const entry of readdirSync(path.join(root, folder), { withFileTypes: true })) {
      const file = path.posix.join(folder, entry.name);
      if (entry.isDirectory() && entry.name !== 'node_modules') walk(file);
      else if (/\.(cpp|h)$/.test(entry.name)) read(file);
    }
  };
  const read = (file) => {
    readFileSync(path.join(root, file), 'utf8').split('\n').forEach((text, n) => {
      const header = text.match(/^\s*#\s*include\s*[<"]([^>"]+)[>"]/)?.[1];
      const says = header && trouble(folder_of(file), header);
      if (says) found.push({ file, line: n + 1, says });
    });
  };
  for (const top of ['core', 'web', 'tests']) walk(top);
  return found;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const found = find_arrows(process.argv[2]);
  for (const { file, line, says } of found) console.error(`${file}:${line}: ${says}`);
  if (found.length > 0) process.exit(1);
  console.log('Arrows between folders only go down.');
}
