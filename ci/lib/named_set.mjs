// Moves what a version of the page is made of into one folder named by the sum of it all: browsers may keep it for
// ever, and one version's files never mix with another's. index.html is pointed there. What keeps its name: index.html,
// and what systems or people ask for by name (manifest, icons, licences.txt, later sw.js).
// usage: named_set.mjs SITE. Also a module: setOf(site) -> that folder.
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, readdirSync, renameSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const k_form = /^set-[0-9a-f]{12}$/, k_keep_their_names = /^((index\.html|licences\.txt|manifest\.webmanifest|favicon\.svg|sw\.js)(\.br|\.gz)?|icon-.*)$/;

// The name of the folder in a built page.
export function setName(site) {
  const name = readdirSync(site).find((each) => k_form.test(each));
  if (name === undefined) throw new Error(`${site} has no folder set-…: ci/build site`);
  return name;
}

export const setOf = (site) => path.join(site, setName(site));

function sumOf(folder, names) {
  const files = names.flatMap((name) => (statSync(path.join(folder, name)).isFile() ? [name]
    : readdirSync(path.join(folder, name), { recursive: true }).map((each) => path.posix.join(name, String(each)))))
    .filter((name) => statSync(path.join(folder, name)).isFile()).sort();
  const sum = createHash('sha256');
  for (const name of files) sum.update(`${name}\n`).update(createHash('sha256').update(readFileSync(path.join(folder, name))).digest());
  return sum.digest('hex').slice(0, 12);
}

if (process.argv[1]?.endsWith('named_set.mjs')) {
  const [site] = process.argv.slice(2);
  const names = readdirSync(site).filter((name) => !k_keep_their_names.test(name));
  const set = `set-${sumOf(site, names)}`, page = path.join(site, 'index.html');
  const html = readFileSync(page, 'utf8').replace(/(href|src)="([^":]+)"/g, (whole, attribute, file) => (
    names.includes(file.split('/')[0]) ? `${attribute}="${set}/${file}"` : whole));
  mkdirSync(path.join(site, set));
  for (const name of names) renameSync(path.join(site, name), path.join(site, set, name));
  writeFileSync(page, html);
}
