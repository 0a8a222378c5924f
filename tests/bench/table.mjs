// The table that ci/bench prints, and the lines that programs give it.
import { execFileSync } from 'node:child_process';

export const verdict = (holds) => (holds ? 'holds' : 'OVER');

// rows: [what, measured, budget, verdict]. Prints; true when no budget is over.
export function table(title, rows) {
  const widths = [0, 1, 2].map((n) => Math.max(...rows.map((row) => row[n].length)));
  console.log(`\n${title}`);
  for (const row of rows) {
    console.log(`  ${row.map((text, n) => (n === 0 ? text.padEnd(widths[0]) : text.padStart(widths[n] ?? 0))).join('  ')}`);
  }
  return !rows.some((row) => row[3].endsWith('OVER'));
}

// What a program printed: an object a line.
export function told_by(program, args) {
  const env = { ...process.env };
  // Set on some machines to steer an old OpenBLAS; they would slow numpy down here.
  delete env.OPENBLAS_CORETYPE;
  delete env.OPENBLAS_L2_SIZE;
  return execFileSync(program, args, { encoding: 'utf8', env, maxBuffer: 2 ** 30 }).trim().split('\n').map((line) => JSON.parse(line));
}

// task -> microseconds.
export const lines_of = (program, args) => new Map(told_by(program, args).map(({ task, median_us }) => [task, median_us]));
