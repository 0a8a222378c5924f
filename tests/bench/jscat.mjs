// The general npm adaptive-testing library @bdelab/jscat at its own, far smaller problem: the next of 100
// items for one ability, and the ability's estimate. Medians, one JSON line a task. ci/peers pins it, with
// the override of facts/diagnosis.md section 5; pass another folder that holds node_modules if need be.
import { createRequire } from 'node:module';
import path from 'node:path';

const folder = path.resolve(process.argv[2] ?? 'ci/peers');
const require = createRequire(path.join(folder, 'package.json'));
const { Cat } = require('@bdelab/jscat');

let state = 5;
const uniform = () => {
  state = (state * 1103515245 + 12345) % 2147483648;
  return state / 2147483648;
};
const items = Array.from({ length: 100 }, () => ({
  a: 0.5 + 1.5 * uniform(), b: 6 * uniform() - 3, c: 0.2 * uniform(), d: 1,
}));

function median_us(task, rounds = 101) {
  const times = [];
  for (let round = 0; round < rounds; round += 1) {
    const start = process.hrtime.bigint();
    task();
    times.push(Number(process.hrtime.bigint() - start) / 1000);
  }
  return times.sort((x, y) => x - y)[(rounds - 1) / 2];
}

const report = (task, us) => console.log(JSON.stringify({ task, median_us: Number(us.toFixed(3)) }));

const cat = new Cat({ method: 'EAP', itemSelect: 'MFI', minTheta: -4, maxTheta: 4 });
for (let warm = 0; warm < 50; warm += 1) cat.findNextItem(items);
report('jscat: next of 100 items, one ability', median_us(() => cat.findNextItem(items)));
const asked = items.slice(0, 10);
const answers = asked.map((_, number) => number % 2);
report('jscat: estimate after 10 answers', median_us(() => {
  new Cat({ method: 'EAP', minTheta: -4, maxTheta: 4 }).updateAbilityEstimate(asked, answers);
}));
