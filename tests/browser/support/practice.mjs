// Practice of one thing to mend: it offers, one after the other, every question about it that has not come up yet.
import { readQuestion } from './answers.mjs';
import { find } from './hands.mjs';

// A family and habits whose questions, taken together, are of every kind.
export const k_all_kinds = { family: 'powder-cover', lacks: ['no-close-before-breath', 'fast-deep'] };

// [{name, worth()}] of what this person has to mend. worth(): it has questions of a kind that is still to be met.
export function toPractise(family, { lacks }, isMet) {
  const kindsOf = (id) => family.questions.filter(({ techniques }) => techniques.includes(id)).map(({ kind }) => kind);
  return family.techniques.filter(({ id }) => lacks.includes(id))
    .map(({ id, name }) => ({ name, worth: () => !kindsOf(id).every(isMet) }));
}

// From the result and back to it. meet(read) -> true: it has given an answer; else "I'm not sure" is given.
// enough() -> true: no more.
export async function practise(way, name, { meet, enough }) {
  await way.press('button', `Show me how: ${name}`);
  await way.press('button', 'Try it now');
  for (;;) {
    if (!await meet(await readQuestion(way.page))) await way.press('button', "I'm not sure");
    if (enough() || await find(way.page, 'button', 'Try another one').count() === 0) break;
    await way.press('button', 'Try another one');
  }
  await way.press('button', 'Go on');
  await way.press('button', 'Back');
}
