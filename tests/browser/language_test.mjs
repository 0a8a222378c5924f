// Another language: the system's from the start, the link's, or picked on the way; the place is kept, the page says
// which language it is in (WCAG 3.1.1), and a language that does not come changes nothing.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { waitForIdle } from './support/browser.mjs';
import { find } from './support/hands.mjs';
import { appForTests } from './support/run.mjs';
import { awaitScreen } from './support/walk.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const read = (file) => JSON.parse(readFileSync(path.join(root, 'assets', file), 'utf8'));
const words = Object.fromEntries(['en', 'es', 'pt'].map((language) => [language, read(`text/${language}.json`)]));
const app = appForTests();

const langOf = (page) => page.evaluate(() => document.documentElement.lang);
const press = async (page, role, name) => {
  await find(page, role, name).evaluate((element) => element.click());  // as a reader does, in view or not
  await waitForIdle(page);
};
const inWords = async (page, text) => {
  await page.getByText(text, { exact: true }).first().waitFor();
  await waitForIdle(page);
};

async function pickUnderLook(page, now, name) {
  await press(page, 'button', words[now].kit.look);
  await press(page, 'radio', name);
}

for (const [why, wish, language] of [
  ['the system asks for it', { locale: 'es-MX' }, 'es'], ['the system asks for it', { locale: 'pt-BR' }, 'pt'],
  ['the link asks for it', { query: '?lang=pt' }, 'pt'], ['the link wins over the system', { query: '?lang=en', locale: 'es-ES' }, 'en'],
  ['nobody translated it', { locale: 'fi-FI' }, 'en'], ['the link asks for nonsense', { query: '?lang=..%2Fx' }, 'en'],
]) {
  test(`starts in ${language} when ${why}`, () => app.with({ calm: true, ...wish }, async (page) => {
    await awaitScreen(page, 'choose-device');
    assert.equal(await langOf(page), language);
    assert.equal(await page.title(), words[language].choose.title);
    await find(page, 'button', words[language].families.spray.name).waitFor();
    assert.deepEqual(page.complaints, []);
  }));
}

const askOf = (page) => page.getByRole('heading', { level: 1 }).textContent();
const logOf = async (page) => JSON.parse(await page.evaluate(() => window.rehale.exportRun()));

async function toQuestion(page, language) {
  await awaitScreen(page, 'choose-device');
  await press(page, 'button', words[language].families.spray.name);
  await awaitScreen(page, 'ready');
  await press(page, 'button', words[language].ready.start);
  await page.waitForFunction(() => window.rehale.exportRun() !== '');
  await waitForIdle(page);
}

test('a switch in the middle of a check keeps question, choice and log', () => app.with({ query: '?seed=3', calm: true }, async (page) => {
  await toQuestion(page, 'en');
  const before = await logOf(page);
  const { question } = before.events.at(-1);
  const told = Object.fromEntries(['en', 'es', 'pt'].map((language) => [language, read(`families/spray/text.${language}.json`).questions[question]]));
  assert.equal(await askOf(page), told.en.ask);
  const option = Object.keys(told.en.options ?? {})[0];
  const role = await page.getByRole('radio').count() > 0 ? 'radio' : 'checkbox';
  const choosable = told.en.options?.[option].label && await find(page, role, told.en.options[option].label).count() > 0;
  assert.ok(choosable, `seed 3 should open with a question to choose from, not ${question}`);
  await press(page, role, told.en.options[option].label);
  await pickUnderLook(page, 'en', 'Español');
  await inWords(page, words.es.kit['look-title']);
  assert.equal(await langOf(page), 'es');
  await press(page, 'button', words.es.kit.close);
  assert.equal(await askOf(page), told.es.ask);
  assert.ok(await find(page, role, told.es.options[option].label).isChecked());
  await pickUnderLook(page, 'es', 'Português');
  await inWords(page, words.pt.kit['look-title']);
  await press(page, 'button', words.pt.kit.close);
  assert.equal(await askOf(page), told.pt.ask);
  assert.deepEqual(await logOf(page), before);
  await press(page, 'button', words.pt.question.next);
  assert.equal((await logOf(page)).events.filter(({ what }) => what === 'answered').length, 1);
  assert.deepEqual(page.complaints, []);
}));

test('3.1.2: a language is called in its own words, and the page says in which', () => app.with({ query: '?seed=4', calm: true }, async (page) => {
  await awaitScreen(page, 'choose-device');
  const langs = (role) => page.getByRole(role, { name: /^(English|Español|Português)$/ }).evaluateAll((all) => all.map((each) => each.lang));
  assert.deepEqual(await langs('button'), ['es', 'pt']);
  await press(page, 'button', words.en.kit.look);
  assert.deepEqual(await langs('radio'), ['en', 'es', 'pt']);
  assert.equal(await find(page, 'button', 'Close').getAttribute('lang'), null);
}));

test('from the first screen, by a button in the language itself; a family picked later is in it, too', () => app.with({ query: '?seed=4', calm: true }, async (page) => {
  await awaitScreen(page, 'choose-device');
  await press(page, 'button', 'Español');
  await inWords(page, words.es.choose.ask);
  assert.equal(await langOf(page), 'es');
  await toQuestion(page, 'es');
  const [begin, shown] = (await logOf(page)).events;
  assert.equal(begin.language, 'es');
  assert.equal(await askOf(page), read('families/spray/text.es.json').questions[shown.question].ask);
}));

test('a language that does not come is told, and everything stays as it was', () => app.with({
  query: '?seed=3', calm: true, route: (page) => page.route('**/text.es.json', (route) => route.abort()),
}, async (page) => {
  await toQuestion(page, 'en');
  const ask = await askOf(page);
  await pickUnderLook(page, 'en', 'Español');
  await press(page, 'button', words.en.kit.close);
  await page.waitForFunction(() => window.rehale.probe().screen === 'trouble');
  await inWords(page, words.en.trouble.language.title);
  await press(page, 'button', words.en.trouble['go-on']);
  assert.equal(await langOf(page), 'en');
  assert.equal(await askOf(page), ask);
}));
