// Times of the diagnosis beside its budgets and its peers, all in this run. usage: core.mjs BUILD
// BUILD holds native/tests/rehale_mastery_bench and wasm/tests/rehale_mastery_bench.js (flags of the page).
import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { cohort_bench } from './cohort.mjs';
import { lines_of, table, verdict } from './table.mjs';

// Microseconds. The budgets: native at portable -O2, WASM at most twice native.
const k_budgets = {
  'update 4096 states': 4,
  'next question, reference mix': 40,
  'select 100 items of 16 groups': 40,
  'next question, 65536 states': 300,
};
const k_wasm_times = 2;
const k_dose_us = 200;
const k_frame_us = 16_000;

const here = path.dirname(fileURLToPath(import.meta.url));

// Peers first and last would meet another processor state; one after the other, natively twice.
export function core_bench(build) {
  const run_native = () => lines_of(path.join(build, 'native/tests/rehale_mastery_bench'), []);
  const first = run_native();
  const wasm = lines_of(process.execPath, [path.join(build, 'wasm/tests/rehale_mastery_bench.js')]);
  const second = run_native();
  const numpy = lines_of('/usr/bin/python3', [path.join(here, 'mastery_numpy.py')]);
  const jscat = lines_of(process.execPath, [path.join(here, 'jscat.mjs')]);

  const rows = [];
  for (const [task, us] of second) {
    const native = Math.min(us, first.get(task));
    const budget = k_budgets[task];
    if (budget) rows.push([`${task}, native`, `${native} us`, `<= ${budget} us`, verdict(native <= budget)]);
    else rows.push([`${task}, native`, `${native} us`, '', '']);
    const times = wasm.get(task) / native;
    rows.push([`${task}, WASM`, `${wasm.get(task)} us`, `<= ${k_wasm_times} x native`,
      `${times.toFixed(2)} x ${verdict(times <= k_wasm_times)}`]);
  }
  for (const [task, us] of numpy) rows.push([`numpy: ${task}`, `${us} us`, '', 'beside']);
  for (const [task, us] of jscat) rows.push([`jscat (one ability): ${task}`, `${us} us`, '', 'beside']);
  const diagnosis = table('Diagnosis', rows);
  const dose = dose_bench(build);
  const cohort = cohort_bench(build);
  return rehearsal_bench(build) && dose && cohort && diagnosis;
}

// One technique through the dose model, beside the cost of its exp calls in the same run.
function dose_bench(build) {
  const rows = [];
  for (const [kind, program, args] of [
    ['native', path.join(build, 'native/tests/rehale_dose_bench'), []],
    ['WASM', process.execPath, [path.join(build, 'wasm/tests/rehale_dose_bench.js')]],
  ]) {
    const [[puff, us], [exps, alone]] = [...lines_of(program, args)];
    const budget = kind === 'native' ? `<= ${k_dose_us} us` : '';
    rows.push([`${puff}, ${kind}`, `${us} us`, budget, budget && verdict(us <= k_dose_us)]);
    rows.push([`${exps}, ${kind}`, `${alone} us`, '', `${(us / alone).toFixed(2)} x beside it`]);
  }
  const asked = Number(execFileSync(path.join(build, 'native/tests/rehale_dose_bench'), ['--allocations'], { encoding: 'utf8' }));
  rows.push(['memory asked for by 1,000 techniques, native', `${asked} times`, '0 times', verdict(asked === 0)]);
  return table('Where the dose goes', rows);
}

// A run-through folded into what it shows; it happens once a press, so there is no budget but a frame.
function rehearsal_bench(build) {
  const rows = [];
  for (const [kind, program, args] of [
    ['native', path.join(build, 'native/tests/rehale_rehearsal_bench'), []],
    ['WASM', process.execPath, [path.join(build, 'wasm/tests/rehale_rehearsal_bench.js')]],
  ]) {
    for (const [task, us] of lines_of(program, args)) {
      rows.push([`${task}, ${kind}`, `${us} us`, `<= ${k_frame_us} us`, verdict(us <= k_frame_us)]);
    }
  }
  return table('Run-through', rows);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = core_bench(process.argv[2]) ? 0 : 1;
