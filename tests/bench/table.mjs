// The table that ci/bench prints.

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
