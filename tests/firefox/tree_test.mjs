// What Firefox hands to screen readers: roles and names of its own accessibility tree, asked for by WebDriver BiDi
// (browsingContext.locateNodes). The other tests here find everything so; this one says what must and must not be there.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { readQuestion, setAnswer } from '../browser/support/answers.mjs';
import { answerOf, familyFromAssets, questionOnScreen } from '../browser/support/person.mjs';
import { find } from '../browser/support/hands.mjs';
import { k_families, onQuestion, openFamily } from '../browser/support/walk.mjs';
import { byReader } from '../browser/support/ways.mjs';
import { firefoxForTests } from './support/firefox.mjs';

const app = firefoxForTests();
const k_start = [
  ['main', undefined], ['heading', 'Which inhaler do you hold?'], ['button', 'Help and about'], ['button', 'Settings'],
  ...Object.values(k_families).map((name) => ['button', name]), ['button', "I don't know which I have"],
];

async function countOf(page, wanted) {
  const counts = {};
  for (const [role, name] of wanted) counts[`${role} ${name ?? ''}`] = await find(page, role, name).count();
  return counts;
}

const all = (wanted, count) => Object.fromEntries(wanted.map(([role, name]) => [`${role} ${name ?? ''}`, count]));

test('the start: each thing once, in its role; the canvas is not in it', () => app.with({}, async (page) => {
  assert.deepEqual(await countOf(page, k_start), all(k_start, 1));
  const not = [['link', 'Spray inhaler'], ['button', 'Spray'], ['image', undefined], ['canvas', undefined], ['dialog', undefined]];
  assert.deepEqual(await countOf(page, not), all(not, 0));
  assert.equal(await page.locator('canvas').count(), 1);
}));

test('the settings: a dialog by its name, and nothing of what lies behind it', () => app.with({}, async (page) => {
  await byReader(page).press('button', 'Settings');
  const there = [['dialog', 'Settings'], ['spinbutton', 'Size of the words'], ['checkbox', 'Stronger contrast'], ['radio', 'Español'], ['button', 'Close']];
  assert.deepEqual(await countOf(page, there), all(there, 1));
  const behind = k_start.slice(1);
  assert.deepEqual(await countOf(page, behind), all(behind, 0));
}));

const k_kinds = ['checkbox', 'order', 'radio'];

// A question that stands on the screen, first as it comes, then with what this person chooses.
async function assertQuestion(page, { family, read, turn }) {
  const there = [['progressbar', `Question ${turn}, up to 12`], ['heading', read.ask], ['button', "I'm not sure"]];
  if (read.kind === 'radio') there.push(['radiogroup', read.ask]);
  if (read.kind === 'checkbox') there.push(['group', read.ask]);
  if (read.kind !== 'order') there.push(...read.labels.map((label) => [read.kind, label]));
  assert.deepEqual(await countOf(page, there), all(there, 1));
  const { labels } = answerOf(family, questionOnScreen(family, read), { lacks: [], holds: [] });
  if (!labels) return;
  await setAnswer(byReader(page), read, { labels });
  for (const label of labels) assert.equal(await find(page, read.kind, label, { checked: true }).count(), 1, label);
}

test('questions: progress, the group named by its question, choices and what is chosen', () => app.with({ query: '?seed=2' }, async (page) => {
  const family = familyFromAssets('powder-cover');
  const missing = new Set(k_kinds);
  await openFamily(byReader(page), family.id);
  for (let turn = 1; missing.size > 0; turn += 1) {
    assert.ok(await onQuestion(page), `not asked: ${[...missing]}`);
    const read = await readQuestion(page);
    if (missing.delete(read.kind)) await assertQuestion(page, { family, read, turn });
    await byReader(page).press('button', "I'm not sure");
  }
  assert.deepEqual(page.complaints, []);
}));
