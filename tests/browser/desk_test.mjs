// The educator's desk: an invented group of 500 checks (rehale_demo_group) pasted, dropped and picked; the weakness
// planted in it (tests/support/demo_group.h) is found on screen, by keyboard alone too; every desk screen is looked over.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { before, describe, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { k_sizes, probe, waitForIdle } from './support/browser.mjs';
import { axe } from './support/checks.mjs';
import { got, groupCodes, k_desk, openReading, paste, rows } from './support/desk.mjs';
import { tabTo } from './support/hands.mjs';
import { underPolicy } from './support/policy.mjs';
import { appForTests } from './support/run.mjs';
import { lookOver } from './support/screen_checks.mjs';
import { awaitScreen } from './support/walk.mjs';
import { byKeys, byReader, byTouch } from './support/ways.mjs';

const app = appForTests();
const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const k_out = path.join(root, '.build/desk');
const k_planted = 'No breath into it';  // 'not-into-device' of the lever family, in Portuguese only
let codes;  // one a line

before(() => {
  codes = groupCodes(360);
  assert.ok(codes.length >= 500, `${codes.length} codes`);
});

// One of several groups of radios: Tab to the group, then arrows.
async function choose(way, label) {
  const { page } = way;
  if (way.name !== 'keyboard') return way.press('radio', label);
  const wanted = await page.getByRole('radio', { name: label, exact: true }).elementHandle();
  const place = () => wanted.evaluate((element) => {
    const group = [...document.getElementsByName(element.name)];
    return group.indexOf(document.activeElement) < 0 ? undefined : group.indexOf(element) - group.indexOf(document.activeElement);
  });
  for (let n = 0; n < 80 && await place() === undefined; n += 1) await page.keyboard.press('Tab');
  const by = await place();
  for (let n = 0; n < Math.abs(by); n += 1) await page.keyboard.press(by > 0 ? 'ArrowDown' : 'ArrowUp');
  await waitForIdle(page);
}

async function filterTo(way, ...choices) {
  await way.press('button', await way.page.getByRole('button', { name: /^Shown now/ }).innerText());
  for (const choice of choices) await choose(way, choice);
}

const k_lever = 'Powder inhaler with a lever';
const all = () => codes.join('\n');

describe('500 results pasted', () => {
  for (const [label, makeWay, wish] of [['by a screen reader', byReader, {}], ['by keyboard alone', byKeys, {}],
    ['by finger on a phone', byTouch, { touch: true, size: k_sizes.phone }]]) {
    test(`${label}: the planted weakness is found`, () => app.with({ ...k_desk, ...wish }, async (page) => {
      const way = makeWay(page);
      await openReading(page, way);
      await page.keyboard.insertText(`${all()}\n`);  // the text has the focus
      if (makeWay === byKeys) {
        for (const stop of ['Or pick files', 'Scan with the camera', 'Read them']) {
          await page.keyboard.press('Tab');
          const name = await page.evaluate(() => document.activeElement.labels?.[0]?.textContent || document.activeElement.textContent);
          assert.equal(name, stop);
        }
        await page.keyboard.press('Enter');
      } else {
        await page.getByRole('button', { name: 'Read them' }).click();
      }
      await got(page, codes.length);
      await way.press('button', 'See the group');
      await awaitScreen(page, 'desk-group');
      await filterTo(way, k_lever, 'First check', 'Português');
      const [heads, first] = await rows(page);
      assert.deepEqual(heads.slice(0, 5), ['Step', 'Not there yet', 'Of', 'Share', '95 % range']);
      assert.ok(first[0].startsWith(`1. ${k_planted}`), first[0]);
      const share = Number(first[1]) / Number(first[2]);
      assert.ok(share > 0.5 && share < 1, first.join(' | '));  // .75 of them lack it
      assert.equal(first[3], `${Math.round(100 * share)} %`);
      await choose(way, 'English');
      const english = (await rows(page)).find(([name]) => name.includes(k_planted));
      assert.ok(Number.parseInt(english[3], 10) < 40, english.join(' | '));
      assert.deepEqual(page.complaints, []);
    }));
  }
});

test('broken, doubled and other lines are told, the rest is read', () => app.with(k_desk, async (page) => {
  const way = byReader(page);
  const changed = codes[3].slice(0, 20) + (codes[3][20] === 'A' ? 'B' : 'A') + codes[3].slice(21);
  const links = codes.slice(0, 3).map((code) => `https://page.invalid/#r=${code}`);
  await paste(page, way, ['Dear all', ...links, changed, `R9${codes[4].slice(2)}`, codes[0], ''].join('\r\n'), 3);
  const words = await page.getByRole('main').innerText();
  for (const part of ['counted once: 1', 'no code in them: 1', 'Made up to show the page: 3']) assert.ok(words.includes(part), words);
  await way.press('button', 'Could not be read: 2');
  const lines = await page.getByRole('listitem').allInnerTexts();
  assert.ok(lines.some((line) => line.startsWith('Pasted text, line 5: A letter was lost or changed.')), lines.join('\n'));
  assert.ok(lines.some((line) => line.startsWith('Pasted text, line 6: A newer page made it.')), lines.join('\n'));
}));

test('files: a list of codes and a saved run, picked and dropped, under the strictest content policy', () =>
  app.with({ ...k_desk, route: underPolicy }, async (page) => {
    const way = byReader(page);
    await openReading(page, way);
    const buffer = Buffer.from(`code,place\r\n${codes.slice(0, 400).map((code) => `${code},"here, there"`).join('\r\n')}\r\n`);
    await page.getByLabel('Or pick files').setInputFiles([{ name: 'list.csv', mimeType: 'text/csv', buffer }]);
    await page.evaluate((text) => {
      const data = new DataTransfer();
      data.items.add(new File([text], 'more codes.txt'));
      data.items.add(new File(['{"kind":"other"}'], 'other.json'));
      data.items.add(new File([`{${' '.repeat(300_000)}}`], 'long.json'));
      document.getElementById('desk-window').dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }));
    }, codes.slice(300).join('\n'));
    assert.equal(await page.locator('#desk-told').innerText(), 'Files dropped: 3');
    await page.getByRole('button', { name: 'Read them' }).click();
    await got(page, codes.length);
    assert.ok((await page.getByRole('main').innerText()).includes('counted once: 100'));
    await way.press('button', 'Could not be read: 2');
    assert.deepEqual((await page.getByRole('listitem').allInnerTexts()).slice(-2),
      ['other.json: This file is no saved result.', 'long.json: This is too long for a result.']);
    assert.deepEqual(page.complaints, []);
  }));

test('the window: axe clean, Escape closes it and the focus goes back', () => app.with(k_desk, async (page) => {
  await openReading(page, byKeys(page));
  assert.deepEqual(await axe(page), []);
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Escape');
  await page.locator('#desk-window').waitFor({ state: 'detached' });
  assert.equal(await page.evaluate(() => document.activeElement.textContent), 'Add results');
  assert.equal((await probe(page)).screen, 'desk-read');
}));

test('reading can be stopped; what was read stays', () => app.with(k_desk, async (page) => {
  const way = byReader(page);
  await openReading(page, way);
  const many = Array.from({ length: 400 }, () => all()).join('\n');  // 200,000 lines, most of them copies
  await page.getByLabel('Or pick files').setInputFiles([{ name: 'many.txt', mimeType: 'text/plain', buffer: Buffer.from(many) }]);
  await page.getByRole('button', { name: 'Read them' }).click();
  await page.getByText(/^[1-9]\d? % read\./).waitFor();
  await page.getByRole('button', { name: 'Stop reading' }).click({ force: true });
  await got(page, codes.length);
  const [, copies] = (await page.getByRole('main').innerText()).match(/counted once: ([\d,]+)/);
  assert.ok(Number(copies.replaceAll(',', '')) < 398 * codes.length, `${copies} copies: all was read`);
}));

test('one person: reasons, chances in words, one page of paper', () => app.with({
  ...k_desk, before: 'window.print = () => { window.printed = (window.printed ?? 0) + 1; }' }, async (page) => {
  const way = byReader(page);
  await paste(page, way, all(), codes.length);
  await way.press('button', 'See one by one');
  await awaitScreen(page, 'desk-people');
  const first = await page.locator('[data-id=result-0]').innerText();
  assert.match(first, /No\. \w{5}, 20\d\d-\d\d-\d\d\..* To teach again: \d+\./);
  await way.press('button', first);
  await awaitScreen(page, 'desk-person');
  const words = await page.getByRole('main').innerText();
  for (const part of ['Self-reported, not observed.', 'Teach again first', 'very likely not there yet', 'made up']) {
    assert.ok(words.includes(part), part);
  }
  await way.press('button', 'Print one page');
  await page.waitForFunction(() => window.printed === 1);
  mkdirSync(k_out, { recursive: true });
  const file = path.join(k_out, 'person.pdf');
  writeFileSync(file, await page.pdf({ format: 'A4' }));
  assert.match(execFileSync('pdfinfo', [file], { encoding: 'utf8' }), /Pages: +1\n/);
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
  const waiting = page.waitForEvent('download');
  await way.press('button', 'Save for a health record (FHIR)');
  const bundle = JSON.parse(readFileSync(await (await waiting).path(), 'utf8'));
  assert.equal(bundle.resourceType, 'Bundle');
  await way.press('button', 'Back to the list');
  await awaitScreen(page, 'desk-people');
  assert.deepEqual(page.complaints, []);
}));

test('a table as CSV says the same as the screen', () => app.with(k_desk, async (page) => {
  const way = byReader(page);
  await paste(page, way, all(), codes.length);
  await way.press('button', 'See the group');
  await filterTo(way, k_lever);
  const waiting = page.waitForEvent('download');
  await way.press('button', 'Save this order (CSV)');
  const file = await (await waiting).path();
  const python = 'import csv,json,sys; print(json.dumps(list(csv.reader(open(sys.argv[1], encoding="utf-8-sig", newline="")))))';
  const [heads, ...saved] = JSON.parse(execFileSync('python3', ['-c', python, file], { encoding: 'utf8' }));
  const shown = (await rows(page)).slice(1);
  assert.ok(shown.length > 5, `${shown.length} steps`);
  assert.equal(saved.length, shown.length);
  saved.forEach((row, n) => {
    const of = (name) => row[heads.indexOf(name)];
    assert.ok(shown[n][0].startsWith(`${of('Place')}. ${of('Step')}`), shown[n][0]);
    if (of('Of') !== '') assert.deepEqual([of('Not there yet'), of('Of')], shown[n].slice(1, 3));
  });
}));

// Every screen of the desk, as the tour of the app does it.
describe('looked over', () => {
  for (const [label, wish] of Object.entries({
    'phone light': { size: k_sizes.phone }, 'tablet dark': { size: k_sizes.tablet, dark: true },
    'screen dark': { size: k_sizes.screen, dark: true } })) {
    test(label, () => app.with({ ...k_desk, ...wish }, async (page) => {
      const way = byReader(page), found = [];
      const look = async (name, how = {}) => {
        await waitForIdle(page, { quiet: 150 });
        for (const problem of await lookOver(page, how)) found.push(`${name}: ${problem}`);
      };
      await awaitScreen(page, 'desk');
      await look('desk', { first: true });
      await paste(page, way, all(), codes.length);
      await way.press('button', 'See the group');
      await awaitScreen(page, 'desk-group');
      await look('group');
      for (const view of ['Before and after', 'How the questions work']) {
        await way.press('button', view);
        await look(view);
      }
      await way.press('button', 'Back');
      await awaitScreen(page, 'desk-read');
      await look('read');
      await way.press('button', 'See one by one');
      await awaitScreen(page, 'desk-people');
      await look('people');
      await way.press('button', await page.locator('[data-id=result-1]').innerText());
      await awaitScreen(page, 'desk-person');
      await look('person');
      assert.deepEqual(found, []);
    }));
  }
});

test('the way in from Help, and back to the self-check', () => app.with({ query: '?x=1', calm: true }, async (page) => {
  const way = byReader(page);
  await awaitScreen(page, 'choose-device');
  await way.press('button', 'Help and about');
  await way.press('button', 'For educators');
  await awaitScreen(page, 'desk');
  await way.press('button', 'To the self-check');
  await awaitScreen(page, 'choose-device');
  await tabTo(page, 'button', 'Spray inhaler');
}));
