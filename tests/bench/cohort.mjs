// A group of 100,000 results from their codes to tables, natively and as WASM; beside it a plain Python script that does
// the same work on the same files in the same run (cohort_plain.py). Sorting and filtering: 100 ms (issue 5).
import { execFileSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { lines_of, table, told_by, verdict } from './table.mjs';

const k_group = 100_000;
const k_python_verdicts = 100;  // the script needs long for each: its rate tells the same
const k_most_us = 100_000;
const k_script = path.join(path.dirname(fileURLToPath(import.meta.url)), 'cohort_plain.py');

const in_ms = (us) => `${(us / 1000).toFixed(1)} ms`;
const a_second = (results, us) => `${Math.round(results / us * 1e6)} a second`;

// The files that the script reads, as the program prints them.
function files_in(folder, program) {
  const wanted = { codes: k_group, runs: k_group, columns: k_python_verdicts, rows: k_group };
  return Object.entries(wanted).map(([what, results]) => {
    const file = path.join(folder, what), out = openSync(file, 'w');
    execFileSync(program, [`--${what}`, String(results)], { stdio: ['ignore', out, 'inherit'] });
    closeSync(out);
    return file;
  });
}

// task -> {us, results}; and lines {size, median, longest}.
function python_on(files) {
  const lines = told_by('/usr/bin/python3', [k_script, ...files]);
  const tasks = lines.filter(({ task }) => task).map(({ task, median_us: us, results = k_group }) => [task, { us, results }]);
  return { tasks: new Map(tasks), sizes: lines.filter(({ size }) => size) };
}

function row_of(task, kind, us, python) {
  const quick = /^(sort|filter)/.test(task);
  const beside = python.get(task);
  const times = beside ? `${(beside.us / beside.results / (us / k_group)).toFixed(1)} x as fast as Python` : '';
  const shown = task.startsWith('codes') ? `${in_ms(us)}, ${a_second(k_group, us)}` : in_ms(us);
  return [`${task}, ${kind}`, shown, quick ? '<= 100 ms' : times, quick ? `${times} ${verdict(us <= k_most_us)}` : ''];
}

function python_rows(python) {
  const rows = [...python].map(([task, { us, results }]) => [`plain Python: ${task}${results < k_group ? ` (${results} results)` : ''}`,
    task.startsWith('verdicts') || /^(sort|filter)/.test(task) ? in_ms(us) : `${in_ms(us)}, ${a_second(results, us)}`, '', 'beside']);
  // It never did all of it: what the parts that were measured come to.
  const part = (task) => python.get(task).us / python.get(task).results * k_group;
  const all = part('codes to answers') + part('codes to verdicts') + part('verdicts to lists and first table');
  return [...rows, ['plain Python: from file to table, added up from its parts', in_ms(all), '', 'beside']];
}

export function cohort_bench(build) {
  const program = path.join(build, 'native/tests/rehale_cohort_bench');
  const folder = mkdtempSync(path.join(tmpdir(), 'rehale-cohort-'));
  try {
    const { tasks, sizes } = python_on(files_in(folder, program));
    const rows = [];
    for (const [kind, run, args] of [
      ['native', program, []], ['WASM', process.execPath, [path.join(build, 'wasm/tests/rehale_cohort_bench.js')]],
    ]) {
      for (const [task, us] of lines_of(run, [...args, String(k_group)])) rows.push(row_of(task, kind, us, tasks));
    }
    const good = table(`A group of ${k_group} results`, [...rows, ...python_rows(tasks)]);
    const kept = sizes.map(({ size, median, longest }) => [`one result as a ${size}`, `${median} letters`, `longest ${longest}`, '']);
    return table('What a result weighs (2000 of them)', kept) && good;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = cohort_bench(process.argv[2]) ? 0 : 1;
