// Answers the question on the screen, whatever kind it is, in one of the ways of ways.mjs.
import assert from 'node:assert/strict';
import { rest } from './hands.mjs';

const k_start = 'Tap to start', k_stop = 'Tap to stop', k_again = 'Do it again';

export const heading = (page) => page.getByRole('heading', { level: 1 }).textContent();

// {ask, kind, labels}; kind as the tree shows it: radio, checkbox, order, number, timing.
export async function readQuestion(page) {
  const ask = await heading(page);
  for (const kind of ['radio', 'checkbox']) {
    const labels = await page.getByRole(kind).evaluateAll((all) => all.map((element) => element.ariaLabel));
    if (labels.length > 0) return { ask, kind, labels };
  }
  if (await page.getByRole('spinbutton').count() > 0) return { ask, kind: 'number', labels: [] };
  if (await page.getByRole('button', { name: k_start }).count() > 0) return { ask, kind: 'timing', labels: [] };
  const picks = await page.getByRole('button', { name: /^Pick up: / }).allTextContents();
  assert.ok(picks.length > 0, `a question of no known kind: ${ask}`);
  return { ask, kind: 'order', labels: picks.map((name) => name.match(/^Pick up: (.*), now \d+ of \d+$/)[1]) };
}

async function putInOrder(way, order) {
  for (const [place, label] of order.entries()) await way.moveCard(label, place);
  assert.deepEqual(await way.cards(), order);
}

async function setNumber(way, name, amount) {
  const spin = way.page.getByRole('spinbutton', { name, exact: true });
  const [now, step, max] = await spin.evaluate((element) => [element.value, element.step, element.max].map(Number));
  const wanted = amount ?? (now + 2 * step <= max ? now + 2 * step : now - 2 * step);
  await way.stepNumber(name, Math.round((wanted - now) / step));
  assert.equal(Number(await spin.inputValue()), wanted);
}

async function stopAfter(way, seconds) {
  await way.page.getByRole('button', { name: k_stop }).waitFor({ timeout: 60_000 });
  await way.page.waitForTimeout(seconds * 1000);
  await way.begin('button', k_stop);
  await way.page.getByRole('button', { name: k_again }).waitFor({ timeout: 60_000 });
  await rest(way.page);
  const told = await way.page.getByRole('main').getByRole('paragraph').filter({ hasText: /^\d+ seconds?$/ }).innerText();
  const counted = parseInt(told, 10);
  assert.ok(counted >= Math.floor(seconds), `${told} after ${seconds} s`);
  return counted;
}

// On a slow machine it may take longer to stop than was meant; then it is done again, as the page offers.
async function holdFor(way, { amount, from = 0, to = Infinity }) {
  const done = await way.page.getByRole('button', { name: k_again }).count() > 0;
  await way.begin('button', done ? k_again : k_start);
  for (let n = 0; n < 5; n += 1) {
    const counted = await stopAfter(way, amount);
    if (counted >= from && counted < to) return;
    await way.begin('button', k_again);
  }
  assert.fail(`it was never between ${from} and ${to} s`);
}

// wish: {labels} for radios and checkboxes, {order} of card labels, {amount} (seconds: also {from, to},
// the band that is meant), or {unsure: true}. What it sets must show in the tree.
export async function setAnswer(way, question, wish) {
  const { page } = way;
  if (question.kind === 'order') return putInOrder(way, wish.order);
  if (question.kind === 'number') return setNumber(way, question.ask, wish.amount);
  if (question.kind === 'timing') return holdFor(way, wish);
  for (const label of wish.labels) await way.choose(question.kind, label);
  const ticked = await page.getByRole(question.kind, { checked: true }).evaluateAll((all) => all.map((e) => e.ariaLabel));
  assert.deepEqual(ticked.sort(), [...wish.labels].sort());
}

// Any answer: `turn` varies which. Something of it is most likely not as it should be.
export function anyAnswer(question, turn) {
  const { kind, labels } = question;
  if (kind === 'radio') return { labels: [labels[turn % labels.length]] };
  if (kind === 'checkbox') return { labels: [labels[turn % labels.length], labels[(turn + 2) % labels.length]] };
  if (kind === 'order') return { order: [labels.at(-1), ...labels.slice(0, -1)] };
  return { amount: kind === 'timing' ? 1 : undefined };  // of a number: two steps away
}
