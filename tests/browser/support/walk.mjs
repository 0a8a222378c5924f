// A whole run as a person goes through it, by the accessibility tree alone: device, ready, questions, result,
// the first thing to mend, practice, back, help and about.
import assert from 'node:assert/strict';
import { anyAnswer, heading, readQuestion, setAnswer } from './answers.mjs';
import { waitForIdle } from './browser.mjs';
import { find, focused } from './hands.mjs';

export const k_families = {
  spray: 'Spray inhaler', 'powder-lever': 'Powder inhaler with a lever',
  'powder-cover': 'Powder inhaler with a cover', 'soft-mist': 'Soft mist inhaler',
};
const k_fewest = 8, k_most = 12;  // what the ready screen promises

// The screen is there: its title, its heading, and the focus on that heading. first: nothing was there before
// it, so the focus may also be where the browser puts it on a fresh page.
export async function arrived(page, { title, h1, first = false }) {
  assert.equal(await page.title(), title);
  if (h1) assert.equal(await heading(page), h1);
  const { role, name } = await focused(page);
  assert.ok(role === 'h1' || (first && role === ''), `on '${title}' the focus is on ${role} '${name}', not on the heading`);
}

// A screen by the name that probe() gives it. Files on their way leave the page at rest on another one.
export async function awaitScreen(page, name) {
  await page.waitForFunction((wanted) => window.rehale?.probe?.().screen === wanted, name, { timeout: 60_000 });
  await waitForIdle(page);
}

export async function openFamily(way, family) {
  await awaitScreen(way.page, 'choose-device');
  await arrived(way.page, { title: 'Rehale: check how you use your inhaler', h1: 'Which inhaler do you hold?', first: true });
  await way.press('button', k_families[family]);
  await awaitScreen(way.page, 'ready');
  await arrived(way.page, { title: 'Before you start', h1: k_families[family] });
  await way.press('button', 'Start');
}

export const onQuestion = async (page) => (await page.title()) === 'Question';

// answer(question, turn) -> a wish for setAnswer; `by`: another way to do it. Returns the questions as read, in order.
export async function takeCheck(way, answer) {
  const { page } = way;
  const asked = [];
  while (await onQuestion(page)) {
    assert.ok(asked.length < k_most, 'the check does not end');
    await arrived(page, { title: 'Question' });
    assert.equal(await page.getByRole('progressbar').getAttribute('aria-label'),
      `Question ${asked.length + 1}, up to ${k_most}`);
    const question = await readQuestion(page);
    const wish = await answer(question, asked.length);
    if (wish.unsure) {
      await way.press('button', "I'm not sure");
    } else {
      const by = wish.by ?? way;
      await setAnswer(by, question, wish);
      await by.press('button', 'Next');
    }
    asked.push(question);
  }
  assert.ok(asked.length >= k_fewest, `only ${asked.length} questions`);
  await arrived(page, { title: 'Your result', h1: 'Your result' });
  return asked;
}

// From the result: the first thing to mend, one question of practice, and back to the result.
export async function mendFirst(way) {
  const { page } = way;
  await way.press('button', 'Work on the first one');
  await arrived(page, { title: 'To do better' });
  const name = await heading(page);
  await way.press('button', 'Try it now');
  await arrived(page, { title: 'Try it now' });
  const question = await readQuestion(page);
  await setAnswer(way, question, anyAnswer(question, 0));
  await way.press('button', 'Check my answer');
  assert.equal(await heading(page), question.ask);
  assert.match(await find(page, 'group', /^(You have this|To do better)$/).innerText(), /\w/);
  assert.match(await page.locator('#polite').innerText(), /You have this\.|Not yet\. See why below\./);
  await way.press('button', 'Go on');
  await arrived(page, { title: 'To do better', h1: name });
  assert.match(await page.getByRole('paragraph').filter({ hasText: 'Tried here' }).innerText(), /^Tried here: [01] of 1 went well\.$/);
  await way.press('button', 'Back');
  await arrived(page, { title: 'Your result', h1: 'Your result' });
  return { name, kind: question.kind };
}

export async function visitAbout(way) {
  await way.press('button', 'Help and about');
  await arrived(way.page, { title: 'Help and about', h1: 'Help and about' });
  await way.press('button', 'Close');
}

// All of it. Returns the kinds of questions that were answered.
export async function walkThrough(way, family) {
  await openFamily(way, family);
  const asked = await takeCheck(way, anyAnswer);
  const { kind } = await mendFirst(way);
  await visitAbout(way);
  await arrived(way.page, { title: 'Your result', h1: 'Your result' });
  assert.deepEqual(way.page.complaints, []);
  return [...asked.map((question) => question.kind), kind];
}
