// Every interface sentence a screen asks for is listed in interface_keys.cpp and stands in every
// language's file; none is listed that no screen asks for.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { is_language_file } from '../../ci/lib/translations.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const screens = path.join(root, 'web/screens');
const is_list = (name) => name.endsWith('_keys.cpp');
const read_all = (which) => readdirSync(screens).filter((name) => name.endsWith('.cpp') && which(name))
  .map((name) => readFileSync(path.join(screens, name), 'utf8')).join('\n');
const sources = read_all((name) => !is_list(name));
const listed = new Set(read_all(is_list).match(/"[a-z0-9-]+(\/[a-z0-9-]+)*"/g)
  .map((word) => word.slice(1, -1)).filter((word) => word !== 'missing-text'));

function flatten(value, at, into) {
  for (const [key, inner] of Object.entries(value)) {
    if (typeof inner === 'object') flatten(inner, [...at, key], into);
    else if (typeof inner === 'string') into.set([...at, key].join('/'), inner);
  }
  return into;
}

const texts = readdirSync(path.join(root, 'assets/text')).filter(is_language_file).map((name) => [name,
  flatten(JSON.parse(readFileSync(path.join(root, 'assets/text', name), 'utf8')), [], new Map())]);

test('every path named in a screen is listed', () => {
  const named = [...sources.matchAll(/say\("([^"]+)"\)/g)].map((hit) => hit[1]).filter((name) => !name.endsWith('/'));
  assert.ok(named.length > 40);
  for (const name of named) assert.ok(listed.has(name), `${name} is shown but not in interface_keys.cpp`);
});

// Words between quotes: of the screens, and of all that may give a screen the rest of a path (ids of the core and the content).
const literals = (text) => new Set([...text.matchAll(/["']([a-z0-9/_-]+)(?=["'])/g)].map(([, word]) => word));
const read_below = (folder, ending) => readdirSync(path.join(root, folder), { recursive: true }).filter((name) => ending.test(name))
  .map((name) => readFileSync(path.join(root, folder, name), 'utf8')).join('\n');
const on_screens = literals(sources);
const dashed = (id) => id.replaceAll('_', '-');  // care_sources.cpp
const ids = new Set([...literals(['core', 'web'].map((folder) => read_below(folder, /(?<!_keys)\.(cpp|h|js)$/)).join('\n') +
  read_below('assets', /(library|procedure|care)\.json$/))].map(dashed));

// "seconds-before" of "seconds" and "-before" (where_controls.cpp).
function is_joined(tail) {
  const [, stem, suffix] = tail.match(/^(.*)(-[a-z]+)$/) ?? [];
  return on_screens.has(stem) && on_screens.has(suffix);
}

// Whole; or put together: its first part from a screen, its last from a screen or an id, or a number.
function is_reached(name) {
  if (on_screens.has(name)) return true;
  const parts = name.split('/');
  const part = (from, to) => parts.slice(from, to).join('/');
  const is_last = (tail) => /^\d+$/.test(tail) || [tail, `/${tail}`, `${tail}/`].some((word) => on_screens.has(word)) ||
    ids.has(tail.replace(/-months$/, '')) || is_joined(tail);
  return parts.slice(1).some((_, n) => (on_screens.has(part(0, n + 1)) || on_screens.has(`${part(0, n + 1)}/`)) &&
    parts.slice(n + 1).some((__, m) => is_last(part(n + 1 + m))));
}

test('every listed path can be reached from a screen', () => {
  for (const name of listed) assert.ok(is_reached(name), `${name} is listed but no screen shows it`);
  // An invented last part is found in each folder of the texts.
  for (const lead of new Set([...listed].map((name) => name.replace(/[^/]+$/, '')))) {
    assert.ok(!is_reached(`${lead}no-such-sentence-at-all`), `${lead} takes anything`);
  }
});

for (const [name, sentences] of texts) {
  test(`assets/text/${name} has every listed sentence`, () => {
    for (const key of listed) assert.ok(sentences.get(key)?.trim(), `${key} is missing`);
  });
}

for (const [name, sentences] of texts) {
  test(`assets/text/${name} calls each family as its own texts do`, () => {
    const language = path.basename(name, '.json');
    for (const family of readdirSync(path.join(root, 'assets/families'))) {
      const own = JSON.parse(readFileSync(path.join(root, `assets/families/${family}/text.${language}.json`), 'utf8'));
      assert.equal(sentences.get(`families/${family}/name`), own.name);
      assert.equal(sentences.get(`families/${family}/tell`), own.tell);
    }
  });
}

for (const [name, sentences] of texts) {
  test(`assets/text/${name} has words for every unit that a question counts in`, () => {
    for (const family of readdirSync(path.join(root, 'assets/families'))) {
      const { questions } = JSON.parse(readFileSync(path.join(root, `assets/families/${family}/questions.json`), 'utf8'));
      for (const { id, range } of questions.filter((question) => question.range)) {
        for (const count of ['one', 'many']) {
          const key = `units/${range.unit}/${count}`;
          assert.ok(listed.has(key) && sentences.get(key)?.trim(), `${key} is missing: ${family}, ${id}`);
        }
      }
    }
  });
}
