// Writes index.html: the build's id, and the words of the first screen, so that the first paint says what
// the app will say. usage: index.mjs WEB_INDEX TEXTS BUILD_ID >OUT
import { readFileSync } from 'node:fs';

const [page, texts, id] = process.argv.slice(2);
const words = JSON.parse(readFileSync(texts, 'utf8'));
const escaped = (text) => text.replace(/[&<>"]/g, (letter) => `&#${letter.charCodeAt(0)};`);

// {{choose/ask}}: the interface sentence at that path.
function sentence(path) {
  const found = path.split('/').reduce((at, name) => at?.[name], words);
  if (typeof found !== 'string') throw new Error(`${texts} has no sentence ${path}, but ${page} wants it`);
  return escaped(found);
}

// Each family's name on a button that answers before the app is there: web/js/boot.js.
const families = Object.entries(words.families)
  .map(([id, { name }]) => `<button type="button" data-family="${escaped(id)}">${escaped(name)}</button>`).join('');

const html = readFileSync(page, 'utf8').replaceAll('@BUILD_ID@', id).replace('{{families}}', families).replace(/\{\{([\w/-]+)\}\}/g, (_, path) => sentence(path));
process.stdout.write(html);
