// Checks every language of assets/library.json against the English it was translated from: no sentence
// missing, none too many, same {places}, and none older than its English (the stamps in
// assets/text/<lang>.sources.json, one an English sentence).
// usage: translations.mjs ROOT [LANG...]         checks; LANG may be one that library.json does not list yet
//        translations.mjs ROOT --stamp LANG [FILE#KEY-START]   "I have read these against today's English"
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const k_from = 'en';
const k_stamp_digits = 10;
const k_head = new Set(['schema', 'family', 'language']);

const read_json = (file) => JSON.parse(readFileSync(file, 'utf8'));
export const stamp_of = (sentence) => createHash('sha256').update(sentence, 'utf8').digest('hex').slice(0, k_stamp_digits);
export const is_language_file = (name) => /^[a-z]{2,3}\.json$/.test(name);

// {"a":{"b":"x"}} -> "a/b": "x"; the head of the file is left out, as in core/catalog/load.cpp.
export function sentences_of(value, at = [], into = new Map()) {
  for (const [key, inner] of Object.entries(value)) {
    if (at.length === 0 && k_head.has(key)) continue;
    if (inner !== null && typeof inner === 'object') sentences_of(inner, [...at, key], into);
    else into.set([...at, key].join('/'), inner);
  }
  return into;
}

// "text/es.json", "families/spray/text.es.json": below assets, the files of a language.
export function files_of(root, language) {
  const families = readdirSync(path.join(root, 'assets/families')).sort();
  return [`text/${language}.json`, ...families.map((family) => `families/${family}/text.${language}.json`)];
}

export const languages_of = (root) => read_json(path.join(root, 'assets/library.json')).languages;
const stamps_file = (root, language) => path.join(root, `assets/text/${language}.sources.json`);

function stamps_of(root, language) {
  const file = stamps_file(root, language);
  return existsSync(file) ? read_json(file).stamps : {};
}

const places_of = (sentence) => [...sentence.matchAll(/\{[^{}]*\}/g)].map(([place]) => place).sort().join(' ');

function compare(english, other, stamps) {
  const found = [];
  for (const [key, sentence] of english) {
    const said = other.get(key);
    if (typeof said !== 'string' || !said.trim()) found.push(`${key}: missing: translate "${sentence}"`);
    else if (places_of(said) !== places_of(sentence)) found.push(`${key}: places: want ${places_of(sentence) || 'none'}, have ${places_of(said) || 'none'}`);
    else if (stamps[key] !== stamp_of(sentence)) found.push(`${key}: stale: the English is now "${sentence}"; read "${said}" against it, then stamp it`);
  }
  for (const key of other.keys()) if (!english.has(key)) found.push(`${key}: extra: English has no such sentence`);
  for (const key of Object.keys(stamps)) if (!english.has(key)) found.push(`${key}: stamp of no sentence: stamp the language again`);
  return found;
}

// ["assets/text/es.json#choose/ask: stale: ...", ...]; empty when all is well.
export function check_language(root, language) {
  const stamps = stamps_of(root, language);
  const theirs = files_of(root, language);
  return files_of(root, k_from).flatMap((file, i) => {
    const place = path.join(root, 'assets', theirs[i]);
    if (!existsSync(place)) return [`assets/${theirs[i]}: missing file`];
    const content = read_json(place);
    const head = content.language === language ? [] : [`language: says ${content.language}, want ${language}`];
    const english = sentences_of(read_json(path.join(root, 'assets', file)));
    return [...head, ...compare(english, sentences_of(content), stamps[file] ?? {})].map((line) => `assets/${theirs[i]}#${line}`);
  });
}

// Notes today's English of every sentence that is translated and whose "file#key" begins with `start`.
export function stamp_language(root, language, start = '') {
  const old = stamps_of(root, language);
  const stamps = {};
  files_of(root, k_from).forEach((file, i) => {
    const place = path.join(root, 'assets', files_of(root, language)[i]);
    const theirs = existsSync(place) ? sentences_of(read_json(place)) : new Map();
    const entries = [...sentences_of(read_json(path.join(root, 'assets', file)))].flatMap(([key, sentence]) => {
      const stamp = theirs.has(key) && `${file}#${key}`.startsWith(start) ? stamp_of(sentence) : old[file]?.[key];
      return stamp ? [[key, stamp]] : [];
    });
    if (entries.length > 0) stamps[file] = Object.fromEntries(entries);
  });
  writeFileSync(stamps_file(root, language), `${JSON.stringify({ schema: 1, language, from: k_from, stamps }, null, 1)}\n`);
}

function main([root, ...rest]) {
  if (rest[0] === '--stamp') return stamp_language(root, rest[1], rest[2]);
  const languages = rest.length > 0 ? rest : languages_of(root).filter((language) => language !== k_from);
  const found = languages.flatMap((language) => check_language(root, language));
  found.forEach((line) => console.log(line));
  console.log(`translations: ${languages.join(', ') || 'none'}: ${found.length} findings`);
  if (found.length > 0) process.exitCode = 1;
}

if (process.argv[1]?.endsWith('translations.mjs') && path.basename(path.dirname(process.argv[1])) === 'lib') main(process.argv.slice(2));
