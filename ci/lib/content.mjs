// Copies assets/*.json to the page, white space taken out; all but what only translators need. Pictures are compiled by scene.mjs; poses go
// into them. usage: content.mjs ASSETS OUT
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const [assets, out] = process.argv.slice(2);

// Glossaries and stamps stay at home.
const is_for_translators = (name) => /^glossary\.|\.sources\.json$/.test(name);

function copy(folder) {
  for (const entry of readdirSync(path.join(assets, folder), { withFileTypes: true })) {
    const at = path.join(folder, entry.name);
    if (entry.isDirectory()) copy(at);
    else if (entry.name.endsWith('.json') && entry.name !== 'poses.json' && !is_for_translators(entry.name)) pack(at);
  }
}

function pack(at) {
  const text = readFileSync(path.join(assets, at), 'utf8');
  mkdirSync(path.dirname(path.join(out, at)), { recursive: true });
  let packed;
  try {
    packed = JSON.stringify(JSON.parse(text));
  } catch {
    packed = text; // the validator names the place; here the page shows it
  }
  writeFileSync(path.join(out, at), packed);
}

copy('');
