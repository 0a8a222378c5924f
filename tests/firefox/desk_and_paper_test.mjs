// Firefox: the educator's desk with an invented group, by mouse; one person's page and a result on paper, printed by
// Firefox itself (WebDriver BiDi, browsingContext.print) and read back by poppler and zbar-tools.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { groupCodes, k_desk, paste, rows } from '../browser/support/desk.mjs';
import { readByZbar } from '../browser/support/qr.mjs';
import { awaitScreen } from '../browser/support/walk.mjs';
import { byMouse, byReader } from '../browser/support/ways.mjs';
import { firefoxForTests } from './support/firefox.mjs';
import { k_pictures, lookAt } from './support/look.mjs';

const app = firefoxForTests();
const codes = groupCodes(60);

// What stands on the paper: its words; the file, as a picture.
async function print(page, name) {
  await page.evaluate(() => { window.print = () => { window.printed = true; }; });  // no window of the system's
  await byReader(page).press('button', 'Print one page');
  await page.waitForFunction(() => window.printed);
  mkdirSync(k_pictures, { recursive: true });
  const file = path.join(k_pictures, `${name}.pdf`);
  writeFileSync(file, await page.real.pdf({ format: 'A4' }));
  assert.match(execFileSync('pdfinfo', [file], { encoding: 'utf8' }), /Pages: +1\n/);
  execFileSync('pdftoppm', ['-r', '150', '-png', '-singlefile', file, file.replace('.pdf', '')]);
  await page.evaluate(() => { dispatchEvent(new Event('afterprint')); });
  return { words: execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' }), picture: file.replace('.pdf', '.png') };
}

test('a group pasted, its table, one person of it, on paper', () => app.with(k_desk, async (page) => {
  const way = byMouse(page);
  await paste(page, way, codes.join('\n'), codes.length);
  await way.press('button', 'See the group');
  await awaitScreen(page, 'desk-group');
  const [heads, first] = await rows(page);
  assert.deepEqual(heads.slice(0, 5), ['Step', 'Not there yet', 'Of', 'Share', '95 % range']);
  assert.equal(first[3], `${Math.round(100 * Number(first[1]) / Number(first[2]))} %`);
  await lookAt(page, 'desk-group');
  await way.press('button', 'Back');
  await way.press('button', 'See one by one');
  await awaitScreen(page, 'desk-people');
  await byReader(page).press('button', await page.locator('[data-id=result-0]').innerText());
  await awaitScreen(page, 'desk-person');
  await lookAt(page, 'desk-person');
  const { words } = await print(page, 'person');
  assert.match(words, /not observed/);
  assert.deepEqual(page.complaints, []);
}));

test('a result on paper: its QR code is the link', () => app.with({ query: `?seed=1#r=${codes[0]}` }, async (page) => {
  await awaitScreen(page, 'result');
  await byMouse(page).press('button', 'Show this to your pharmacist or nurse');
  await awaitScreen(page, 'hand-over');
  await page.getByRole('img', { name: /^QR code/ }).waitFor();
  const { words, picture } = await print(page, 'result');
  assert.match(words, /not observed/);
  assert.deepEqual(readByZbar(picture), [`${app.site.url}#r=${codes[0]}`]);
  assert.deepEqual(page.complaints, []);
}));
