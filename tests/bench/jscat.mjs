// The general adaptive-testing library of npm on 100 items and ONE ability: a far smaller problem than
// 12 techniques and 4,096 states. Prints medians, one JSON line a task.
import { createRequire } from 'node:module';

const { Cat } = createRequire(new URL('../../ci/peers/package.json', import.meta.url))('@bdelab/jscat');

const items = Array.from({ length: 100 }, (_, i) => ({
  id: i, a: 0.8 + (i % 7) * 0.2, b: -2 + (i * 4) / 99, c: 0.25, d: 0.95,
}));

function medianUs(task, rounds = 51, calls = 20) {
  for (let n = 0; n < 200; n += 1) task();  // the engine compiles what runs often
  const times = Array.from({ length: rounds }, () => {
    const start = performance.now();
    for (let n = 0; n < calls; n += 1) task();
    return ((performance.now() - start) * 1000) / calls;
  });
  return times.sort((a, b) => a - b)[rounds >> 1];
}

function report(task, us) { console.log(JSON.stringify({ task, median_us: Number(us.toFixed(3)) })); }

const chooser = new Cat({ method: 'EAP', itemSelect: 'MFI', theta: 0.3, priorDist: 'norm', priorPar: [0, 1] });
report('select next of 100 (most information)', medianUs(() => chooser.findNextItem(items, 'MFI')));

const answered = items.filter((_, i) => i % 10 === 0);
report('ability after 10 answers (EAP)', medianUs(() => {
  const cat = new Cat({ method: 'EAP', theta: 0, priorDist: 'norm', priorPar: [0, 1] });
  cat.updateAbilityEstimate(answered, answered.map((_, i) => i % 2));
}, 21, 5));
