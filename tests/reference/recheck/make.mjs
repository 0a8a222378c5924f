// Random histories through npm's ts-fsrs (next_state), for core/recheck to be held against.
//   node make.mjs            writes histories.txt beside this file
//   node make.mjs --check    makes it again and compares
// One history a line: profile (card|habit), then for every check: grade days stability difficulty interval,
// interval being that for a recall of .8 before rounding.
import { readFileSync, writeFileSync } from 'node:fs';
import { fsrs } from 'ts-fsrs';

const k_habit_weights = { 0: 3, 1: 7, 2: 15.5, 3: 30, 20: 0.5 };

function model(profile) {
  const card = fsrs({ request_retention: 0.8, enable_fuzz: false });
  if (profile === 'card') return card;
  return fsrs({ request_retention: 0.8, enable_fuzz: false,
    w: card.parameters.w.map((weight, n) => k_habit_weights[n] ?? weight) });
}

// splitmix32: any even generator does
function generator(seed) {
  let state = seed >>> 0;
  return (count) => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) % count;
  };
}

export function make() {
  const below = generator(20261125);
  const lines = [];
  for (let n = 0; n < 400; n += 1) {
    const profile = n % 2 ? 'habit' : 'card';
    const scheduler = model(profile);
    let state = null;
    const words = [profile];
    for (let check = 1 + below(8); check > 0; check -= 1) {
      const grade = 1 + below(4);
      const days = state === null || below(5) === 0 ? 0 : 1 + below([3, 40, 400][below(3)]);
      state = scheduler.next_state(state, days, grade);
      words.push(grade, days, state.stability, state.difficulty, state.stability * scheduler.interval_modifier);
    }
    lines.push(words.join(' '));
  }
  return `${lines.join('\n')}\n`;
}

const file = new URL('histories.txt', import.meta.url);
export const committed = () => readFileSync(file, 'utf8');
if (process.argv[1]?.endsWith('recheck/make.mjs')) {
  if (process.argv[2] === '--check') {
    const same = committed() === make();
    console.log(same ? 'as it should be' : 'histories.txt is not what make.mjs makes');
    process.exit(same ? 0 : 1);
  }
  writeFileSync(file, make());
}
