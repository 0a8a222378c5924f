// To every screen of the app, one after the other; visit(name, how) is called on each.
import { readQuestion, setAnswer } from './answers.mjs';
import { find } from './hands.mjs';
import { answerOf, familyFromAssets, questionOnScreen } from './person.mjs';
import { k_all_kinds, practise, toPractise } from './practice.mjs';
import { stepsOf } from './rehearse.mjs';
import { awaitScreen, takeCheck } from './walk.mjs';

const k_in_between = { rest_ms: 300 };  // a state of a screen that has been at rest before
export const k_kinds = ['one', 'several', 'picture', 'order', 'timing', 'numbers'];

async function tourFinder(way, visit) {
  await way.press('button', "I don't know which I have");
  await visit('finder: a step');
  await way.press('button', 'Yes, I push a metal can');
  await way.press('button', 'No, it goes right to my mouth');
  await visit('finder: found');
  await way.press('button', 'Back');
  await way.press('button', "I can't tell");
  await visit('finder: not here');
  await way.press('button', 'Show all of them again');
}

// With results in it: desk_test.mjs.
async function tourDesk(way, visit) {
  await way.press('button', 'Help and about');
  await way.press('button', 'For educators');
  await visit("educator's desk");
  await way.press('button', 'Read results');
  await visit("educator's desk: read");
  await way.press('button', 'Back');
  await way.press('button', 'To the self-check');
}

async function tourDialogs(way, visit) {
  await way.press('button', 'Settings');
  await visit('settings', { dialog: true });
  await way.page.keyboard.press('Escape');
  await find(way.page, 'dialog').waitFor({ state: 'detached' });
  await way.press('button', 'Back');
  await visit('leave dialog', { dialog: true });
  await way.press('button', 'Stay here');
}

// Each kind of question once, and what it looks like in between.
async function visitKind(way, visit, { kind, read, wish }) {
  await visit(`question: ${kind}`);
  if (kind === 'order') {
    await way.press('button', `Pick up: ${read.labels[1]}, now 2 of ${read.labels.length}`);
    await visit('question: order, a card picked up', k_in_between);
    await way.press('button', `Put down: ${read.labels[1]}, stays at 2 of ${read.labels.length}`);
  }
  if (kind === 'one') {
    await way.press('button', 'Next');
    await visit('question: one, Next too early', k_in_between);
  }
  if (kind !== 'timing' || wish.unsure) return;
  await setAnswer(way, read, wish);
  await way.page.waitForTimeout(1100);  // with reduced motion one frame is still owed: that of the next whole second
  await visit('question: timing, done', k_in_between);
}

// A check as this person, seeing each kind once; met: the kinds seen.
async function tourCheck(way, visit, { family, person, met }) {
  await takeCheck(way, async (read) => {
    const question = questionOnScreen(family, read);
    const wish = answerOf(family, question, person);
    if (!met.has(question.kind)) {
      met.add(question.kind);
      await visitKind(way, visit, { kind: question.kind, read, wish });
    }
    return wish;
  });
}

async function tourMending(way, visit, { family, person }) {
  await visit('result: to mend');
  await way.press('button', 'Show this to your pharmacist or nurse');
  await way.page.locator('[data-id="qr"]').waitFor({ state: 'attached' });
  await visit('hand over');
  await way.press('button', 'Back');
  await way.press('button', 'Work on the first one');
  await visit('mend');
  await way.press('button', 'Try it now');
  await visit('practice: open');
  const read = await readQuestion(way.page);
  const wish = answerOf(family, questionOnScreen(family, read), person);
  if (!wish.unsure) await setAnswer(way, read, wish);
  await way.press('button', wish.unsure ? "I'm not sure" : 'Check my answer');
  await visit('practice: told', k_in_between);
  await way.press('button', 'Go on');
  await way.press('button', 'Help and about');
  await visit('about');
  await way.press('button', 'Close');
  await way.press('button', 'Back');
}

// Kinds that the check did not ask, by practising what is to be mended.
async function tourPractice(way, visit, { family, person, met }) {
  const meet = async (read) => {
    const question = questionOnScreen(family, read);
    if (met.has(question.kind)) return false;
    met.add(question.kind);
    const wish = answerOf(family, question, { lacks: [], holds: [] });
    await visitKind(way, visit, { kind: question.kind, read, wish });
    return false;
  };
  for (const { name, worth } of toPractise(family, person, (kind) => met.has(kind))) {
    if (worth()) await practise(way, name, { meet, enough: () => !worth() });
  }
}

async function tourRunThrough(way, visit, { actions }) {
  await way.press('button', 'Do a timed run-through');
  await visit('run-through: before');
  await way.press('button', 'Start');
  await visit('run-through: acting');
  await way.press('button', actions);
  await way.press('button', 'I am done');
  await visit('run-through: told');
  await way.press('button', 'Go back');
}

async function tourCare(way, visit) {
  await way.press('button', 'Counter and care');
  await awaitScreen(way.page, 'care');
  await visit('care: numbers');
  for (const name of ['I know the day I opened it', 'I see a last date on it']) await way.press('button', name);
  await way.press('button', 'My leaflet has other numbers');
  await visit('care: all of it open', k_in_between);
  await way.press('button', 'Show my dates');
  await visit('care: days');
  await way.press('button', 'Where these numbers come from');
  await visit('care: grounds', k_in_between);
  await way.press('button', 'Done');
}

async function tourAgain(way, visit) {
  await way.press('button', 'When to check again');
  await visit('again');
  await way.press('button', 'Keep them on this device');
  await find(way.page, 'button', 'Delete all that is kept here').waitFor();
  await visit('again: kept', k_in_between);
  await way.press('button', 'Delete all that is kept here');
  await find(way.page, 'button', 'Keep them on this device').waitFor();
  await way.press('button', 'Back to your result');
}

// The screens of who sets a practice, from '#set'.
export async function tourSet(way, visit) {
  const { page } = way;
  await awaitScreen(page, 'set-practice');
  await visit('set a practice', { first: true });
  await way.press('checkbox', 'Spray inhaler');
  await way.press('checkbox', 'Soft mist inhaler');
  for (const more of ['Number of questions and language', 'Steps to look at', 'Seal the results']) await way.press('button', more);
  await page.getByRole('checkbox', { name: 'Hold your breath' }).waitFor();
  await visit('set a practice: all of it', { ...k_in_between, first: true });  // a reader's press moves no focus
  await way.press('button', 'Make the link');
  await page.getByRole('img', { name: /^QR code/ }).waitFor();
  await visit('set a practice: the link');
}

// What such a link shows, from '#a=…' for two families.
export async function tourAsked(way, visit) {
  await awaitScreen(way.page, 'asked');
  await visit('asked', { first: true });
  await way.press('button', 'Soft mist inhaler');
  await awaitScreen(way.page, 'ready');
  await visit('asked: ready');
}

// Returns the kinds of questions seen.
export async function tour(way, visit) {
  const met = new Set();
  const family = familyFromAssets(k_all_kinds.family);
  const careless = { lacks: [...k_all_kinds.lacks, 'seal-lips-vents-clear'], holds: [] };
  await awaitScreen(way.page, 'choose-device');
  await visit('choose', { first: true, rest_ms: 10_000 });
  await tourFinder(way, visit);
  await tourDesk(way, visit);
  await way.press('button', family.name);
  await awaitScreen(way.page, 'ready');
  await visit('ready');
  await way.press('button', 'See where the medicine goes');
  await visit('where it goes');
  await way.press('button', 'Back');
  await tourRunThrough(way, visit, { actions: stepsOf(family.id).once[0].label });
  await tourCare(way, visit);
  await way.press('button', 'Start');
  await tourDialogs(way, visit);
  await tourCheck(way, visit, { family, person: careless, met });
  await tourMending(way, visit, { family, person: careless });
  await tourPractice(way, visit, { family, person: careless, met });
  await way.press('button', 'Check again');
  await way.press('button', 'Start');
  await tourCheck(way, visit, { family, person: { lacks: [], holds: [] }, met });
  await visit('result: nothing to mend');
  await tourAgain(way, visit);
  return met;
}
