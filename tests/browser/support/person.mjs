// A person with known habits: what they answer to each question of a family, looked up in assets/families by the
// words on the screen. The idea is tests/support/courses.cpp's.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { orderThatLacks } from './orders.mjs';

const k_assets = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../../assets/families');

// {id, name, techniques, misconceptions, rules, questions}, each question with its words.
export function familyFromAssets(id) {
  const read = (file) => JSON.parse(readFileSync(path.join(k_assets, id, file), 'utf8'));
  const [procedure, { questions }, text] = [read('procedure.json'), read('questions.json'), read('text.en.json')];
  const worded = (list, words) => list.map((one) => ({ ...one, ...words[one.id] }));
  return {
    id, name: text.name, rules: procedure.rules,
    techniques: worded(procedure.techniques, text.techniques),
    misconceptions: worded(procedure.misconceptions, text.misconceptions),
    questions: questions.map((question) => {
      const words = text.questions[question.id];
      const cards = (question.actions ?? []).map((action) => ({ id: action, label: text.actions[action].label }));
      const options = (question.options ?? []).map((one) => ({ ...one, label: words.options[one.id].label }));
      return { ...question, ask: words.ask, options, cards };
    }),
  };
}

// The question that stands on the screen: {ask, labels} as answers.mjs reads them.
export function questionOnScreen(family, { ask, labels }) {
  const wordsOf = ({ options, cards }) => [...options, ...cards].map(({ label }) => label).filter(Boolean);
  const same = (question) => question.ask === ask && wordsOf(question).sort().join('|') === [...labels].sort().join('|');
  const found = family.questions.filter(same);
  if (found.length !== 1) throw new Error(`${found.length} questions of ${family.id} read: ${ask} [${labels.join(' | ')}]`);
  return found[0];
}

const k_unsure = { unsure: true };

// Inside a band. Seconds: away from its edges, since a page may be slow; numbers: the first that can be set.
function amountIn({ from, to }, { min, step }, kind) {
  if (kind === 'timing') return { amount: to === null ? from + 0.6 : (from + to) / 2, from, to: to ?? Infinity };
  return { amount: min + step * Math.ceil((from - min) / step) };
}

function severalOf({ options }, { lacks, holds }) {
  const ticks = ({ right, technique, misconception }) => {
    const lacking = lacks.includes(technique);
    if (right) return !lacking;
    return misconception ? holds.includes(misconception) : lacking;
  };
  return { labels: options.filter(ticks).map(({ label }) => label) };
}

// The option this person is drawn to: that of a rule they hold, else one that shows what they lack.
function drawnTo({ options }, { lacks, holds }) {
  return options.find(({ misconception }) => holds.includes(misconception))
    ?? options.findLast(({ right, technique, misconception }) => !right && !misconception && lacks.includes(technique));
}

function orderOf(family, { cards }, lacks) {
  const order = orderThatLacks(family.rules, cards.map(({ id }) => id), lacks);
  return order ? { order: order.map((id) => cards.find((card) => card.id === id).label) } : k_unsure;
}

// person: {lacks: [technique ids], holds: [misconception ids]}. A wish for answers.mjs.
export function answerOf(family, question, person) {
  const { kind, techniques, range } = question;
  if (kind === 'several') {
    const answer = severalOf(question, person);
    return answer.labels.length > 0 ? answer : k_unsure;
  }
  const lacks = techniques.filter((id) => person.lacks.includes(id));
  if (kind === 'order') return orderOf(family, question, lacks);
  const option = lacks.length > 0 ? drawnTo(question, person) : question.options.find(({ right }) => right);
  if (!option) return k_unsure;
  return range ? amountIn(option, range, kind) : { labels: [option.label] };
}
