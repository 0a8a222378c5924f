// The educator's desk as tests of it need it: codes of an invented group, the window for results, what was read.
import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { setOf } from '../../../ci/lib/named_set.mjs';
import { waitForIdle } from './browser.mjs';
import { awaitScreen } from './walk.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../..');
const k_site = process.env.REHALE_SITE ?? path.join(root, '.build/site');

export const k_desk = { query: '?x=1#desk', calm: true };

// Codes of checks, no two the same (rehale_demo_group).
export function groupCodes(people) {
  const tool = path.join(root, '.build/tools/tests/rehale_demo_group');
  return execFileSync(tool, [path.join(setOf(k_site), 'content'), String(people)], { encoding: 'utf8', maxBuffer: 1 << 26 }).trim().split('\n');
}

export const addWindow = (page) => page.getByRole('dialog', { name: 'Add results' });

export async function openReading(page, way) {
  await awaitScreen(page, 'desk');
  await way.press('button', 'Read results');
  await awaitScreen(page, 'desk-read');
  await way.press('button', 'Add results');
  await addWindow(page).waitFor();
}

export async function got(page, count) {
  await page.getByRole('status').filter({ hasText: `Results read: ${count}.` }).waitFor();
  await waitForIdle(page);
}

// At once: on a busy machine the browser's own typing-in of 500 lines takes a minute.
export async function paste(page, way, text, count) {
  await openReading(page, way);
  await page.getByRole('textbox', { name: 'Codes or links, one a line' }).evaluate((element, words) => { element.value = words; }, text);
  await page.getByRole('button', { name: 'Read them' }).evaluate((element) => element.click());
  await got(page, count);
}

// The table as a reader hears it: rows of texts.
export const rows = (page) => page.getByRole('table').getByRole('row').evaluateAll((all) =>
  all.map((row) => [...row.children].map((cell) => cell.textContent)));

// What could not be read, as the screen says it.
export async function unread(way, count) {
  await way.press('button', `Could not be read: ${count}`);
  return (await way.page.getByRole('listitem').allInnerTexts()).slice(-count);
}
