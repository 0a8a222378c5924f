// What travels until the first question can be answered, brotli; fails when it is over the budget.
// usage: weigh.mjs SITE
import { readFileSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';

const k_budget_bytes = 300_000; // the "300 KB all told"

// [{name, bytes}]: all that the page asks for at the start, and the heaviest family with its picture.
export function first_load(site) {
  const weigh = (name) => ({ name, bytes: statSync(path.join(site, `${name}.br`)).size });
  const shell = readdirSync(site, { withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(html|js|css|wasm|svg)$/.test(entry.name))
    .map((entry) => weigh(entry.name));
  const fonts = readdirSync(path.join(site, 'fonts')).filter((name) => name.endsWith('.ttf'))
    .map((name) => weigh(`fonts/${name}`));
  const shared = ['content/library.json', 'content/text/en.json'].map(weigh);
  const families = readdirSync(path.join(site, 'content/families')).map((family) => {
    const folder = `content/families/${family}`;
    const bytes = readdirSync(path.join(site, folder)).filter((name) => name.endsWith('.json'))
      .reduce((sum, name) => sum + weigh(`${folder}/${name}`).bytes, 0);
    return { name: `${folder} (the heaviest)`, bytes };
  });
  return [...shell, ...fonts, ...shared, families.sort((a, b) => b.bytes - a.bytes)[0]];
}

if (process.argv[1]?.endsWith('weigh.mjs')) {
  const parts = first_load(process.argv[2]);
  const total = parts.reduce((sum, { bytes }) => sum + bytes, 0);
  for (const { name, bytes } of parts) console.log(`${String(bytes).padStart(8)}  ${name}`);
  console.log(`${String(total).padStart(8)}  to the first question, brotli; at most ${k_budget_bytes}`);
  if (total > k_budget_bytes) process.exitCode = 1;
}
