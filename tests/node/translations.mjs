// The check of translations finds what it should find, and the shipped languages pass it.
import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { check_language, is_language_file, languages_of, stamp_language } from '../../ci/lib/translations.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');

// A small project with English and one translation, stamped.
function with_project(run) {
  const at = mkdtempSync(path.join(tmpdir(), 'rehale-texts-'));
  const write = (file, content) => writeFileSync(path.join(at, 'assets', file), JSON.stringify(content));
  const edit = (file, change) => {
    const content = JSON.parse(readFileSync(path.join(at, 'assets', file), 'utf8'));
    change(content);
    write(file, content);
  };
  try {
    mkdirSync(path.join(at, 'assets/text'), { recursive: true });
    mkdirSync(path.join(at, 'assets/families/pipe'), { recursive: true });
    write('library.json', { languages: ['en', 'xx'] });
    write('text/en.json', { schema: 1, language: 'en', ask: { now: '{n} of {m}', then: 'Then' } });
    write('text/xx.json', { schema: 1, language: 'xx', ask: { now: '{m} / {n}', then: 'Neht' } });
    write('families/pipe/text.en.json', { schema: 1, language: 'en', family: 'pipe', name: 'Pipe' });
    write('families/pipe/text.xx.json', { schema: 1, language: 'xx', family: 'pipe', name: 'Epip' });
    stamp_language(at, 'xx');
    run(at, edit);
  } finally {
    rmSync(at, { recursive: true });
  }
}
const sorts = (at) => check_language(at, 'xx').map((line) => line.split(': ').slice(0, 2).join(': '));

test('a whole and fresh translation passes', () => with_project((at) => assert.deepEqual(check_language(at, 'xx'), [])));

test('a missing, an empty and an extra sentence are found', () => with_project((at, edit) => {
  edit('text/xx.json', (texts) => { delete texts.ask.then; texts.ask.now = ' '; texts.more = 'Erom'; });
  assert.deepEqual(sorts(at), ['assets/text/xx.json#ask/now: missing', 'assets/text/xx.json#ask/then: missing',
    'assets/text/xx.json#more: extra']);
}));

test('a place that is lost or misspelt is found', () => with_project((at, edit) => {
  edit('text/xx.json', (texts) => { texts.ask.now = '{m} / {k}'; });
  assert.deepEqual(sorts(at), ['assets/text/xx.json#ask/now: places']);
}));

test('a changed English sentence makes its translation stale, until it is stamped', () => with_project((at, edit) => {
  edit('families/pipe/text.en.json', (texts) => { texts.name = 'Pipe!'; });
  edit('text/en.json', (texts) => { texts.ask.then = 'Then, then'; });
  assert.deepEqual(sorts(at), ['assets/text/xx.json#ask/then: stale', 'assets/families/pipe/text.xx.json#name: stale']);
  stamp_language(at, 'xx', 'text/en.json#ask/');
  assert.deepEqual(sorts(at), ['assets/families/pipe/text.xx.json#name: stale']);
  stamp_language(at, 'xx');
  assert.deepEqual(sorts(at), []);
}));

test('an English sentence that is gone, a lost file and a wrong head are found', () => with_project((at, edit) => {
  edit('text/en.json', (texts) => { delete texts.ask.then; });
  edit('text/xx.json', (texts) => { texts.language = 'en'; });
  rmSync(path.join(at, 'assets/families/pipe/text.xx.json'));
  assert.deepEqual(sorts(at), ['assets/text/xx.json#language: says en, want xx', 'assets/text/xx.json#ask/then: extra',
    'assets/text/xx.json#ask/then: stamp of no sentence', 'assets/families/pipe/text.xx.json: missing file']);
}));

test('every language with a file is one of the library, and there are several', () => {
  const written = readdirSync(path.join(root, 'assets/text')).filter(is_language_file).map((name) => path.basename(name, '.json'));
  assert.deepEqual(written.sort(), [...languages_of(root)].sort());
  assert.ok(written.length > 1);
});

for (const language of languages_of(root).filter((one) => one !== 'en')) {
  test(`${language} is whole and fresh`, () => assert.deepEqual(check_language(root, language), []));
}
