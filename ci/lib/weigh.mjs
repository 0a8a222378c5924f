// What travels until the first question can be answered, brotli; fails when it is over the budget.
// usage: weigh.mjs SITE
import { readFileSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { setName, setOf } from './named_set.mjs';

const k_budget_bytes = 300_000; // the "300 KB all told"

// [{name, bytes}]: what the page asks for at the start (every family's picture among it), and the words
// and questions of the heaviest family. A person loads one language: the heaviest of them counts.
export function first_load(site) {
  const { languages } = JSON.parse(readFileSync(path.join(setOf(site), 'content/library.json'), 'utf8'));
  const loads = languages.map((language) => load_in(site, setName(site), language));
  const total = (parts) => parts.reduce((sum, { bytes }) => sum + bytes, 0);
  return loads.reduce((most, parts) => (total(parts) > total(most) ? parts : most));
}

function load_in(site, set, language) {
  const its_own = (name) => !name.startsWith('text.') || name === `text.${language}.json`;
  const weigh = (name) => ({ name, bytes: statSync(path.join(site, `${name}.br`)).size });
  const files_of = (folder, form) => readdirSync(path.join(site, folder), { withFileTypes: true })
    .filter((entry) => entry.isFile() && form.test(entry.name) && its_own(entry.name))
    .map((entry) => weigh(path.posix.join(folder, entry.name)));
  const together = (name, parts) => ({ name, bytes: parts.reduce((sum, { bytes }) => sum + bytes, 0) });
  const folders = readdirSync(path.join(site, set, 'content/families')).map((family) => `${set}/content/families/${family}`);
  const families = folders.map((folder) => together(`${folder} (the heaviest)`, files_of(folder, /\.json$/)));
  return [
    ...files_of('', /^(?!sw\.|icon-).*\.(html|js|svg)$/), ...files_of(set, /^(?!later-).*\.(js|css|wasm)$/), ...files_of(`${set}/fonts`, /\.ttf$/),
    ...['content/library.json', `content/text/${language}.json`, 'content/scenes.txt'].map((name) => weigh(`${set}/${name}`)),
    families.sort((a, b) => b.bytes - a.bytes)[0],
  ];
}

if (process.argv[1]?.endsWith('weigh.mjs')) {
  const parts = first_load(process.argv[2]);
  const total = parts.reduce((sum, { bytes }) => sum + bytes, 0);
  for (const { name, bytes } of parts) console.log(`${String(bytes).padStart(8)}  ${name}`);
  console.log(`${String(total).padStart(8)}  to the first question, brotli; at most ${k_budget_bytes}`);
  const set = setOf(process.argv[2]), later = readdirSync(set).find((name) => /^later-.*\.wasm\.br$/.test(name));
  console.log(`${String(statSync(path.join(set, later)).size).padStart(8)}  ${later}, after it`);
  if (total > k_budget_bytes) process.exitCode = 1;
}
