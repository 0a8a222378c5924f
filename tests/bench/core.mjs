// Times of the diagnosis beside its budgets and its peers, all in this run. usage: core.mjs BUILD
// BUILD holds native/tests/rehale_mastery_bench and wasm/tests/rehale_mastery_bench.js (flags of the page).
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { table, verdict } from './table.mjs';

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
const k_group = 100_000;

const here = path.dirname(fileURLToPath(import.meta.url));

function lines_of(program, args) {
  const env = { ...process.env };
  // Set on some machines to steer an old OpenBLAS; they would slow numpy down here.
  delete env.OPENBLAS_CORETYPE;
  delete env.OPENBLAS_L2_SIZE;
  const text = execFileSync(program, args, { encoding: 'utf8', env });
  return new Map(text.trim().split('\n').map(JSON.parse).map(({ task, median_us }) => [task, median_us]));
}

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
  return table('Where the dose goes', rows);
}

// A group of 100,000 results from their codes to tables; beside it a plain Python script on rows that hold the verdicts
// already, so it has only the last step to do. Sorting and filtering: 100 ms (issue 5).
function cohort_bench(build) {
  const program = path.join(build, 'native/tests/rehale_cohort_bench');
  const folder = mkdtempSync(path.join(tmpdir(), 'rehale-cohort-'));
  const rows = [];
  try {
    const file = path.join(folder, 'rows.csv');
    writeFileSync(file, execFileSync(program, ['--csv', String(k_group)], { maxBuffer: 2 ** 28 }));
    const plain = lines_of('/usr/bin/python3', [path.join(here, 'cohort_plain.py'), file]);
    for (const [kind, run, args] of [
      ['native', program, []], ['WASM', process.execPath, [path.join(build, 'wasm/tests/rehale_cohort_bench.js')]],
    ]) {
      for (const [task, us] of lines_of(run, [...args, String(k_group)])) {
        const quick = /^(sort|filter)/.test(task);
        rows.push([`${k_group} results: ${task}, ${kind}`, `${(us / 1000).toFixed(1)} ms`, quick ? '<= 100 ms' : '',
          quick ? verdict(us <= 100_000) : '']);
        if (task.startsWith('read')) rows.push([`results read, ${kind}`, `${Math.round(k_group / us * 1e6)} a second`, '', '']);
      }
    }
    for (const [task, us] of plain) rows.push([`plain Python, verdicts given: ${task}`, `${(us / 1000).toFixed(1)} ms`, '', 'beside']);
  } finally {
    rmSync(folder, { recursive: true });
  }
  return table('A group of results', rows);
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
