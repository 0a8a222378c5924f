// clang-tidy over our own sources. Most of its time goes into the standard library's headers, so files that do not
// get in each other's way are looked at as one (file_groups.mjs); where that does not compile, one by one. A file is
// looked at again only when it, a header of ours that it includes, or the rules have changed.
// usage: tidy.mjs ROOT BUILD_WITH_COMPILE_COMMANDS MARKS
import { execFile, execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { groupsOf, publicNames } from './file_groups.mjs';

const [root, build, marks] = process.argv.slice(2);
const run = promisify(execFile);
// The browser's half of the shell is compiled by Emscripten alone, which clang-tidy cannot follow.
const k_wanted = ['core/*.cpp', 'web/*.cpp', 'tests/support/*.cpp', 'tests/tools/*.cpp'];
const k_together = 20;  // files, at most
const k_not = /_web\.cpp$|^web\/main\.cpp$/;

const k_main = /^int main\(/m;

const read = (file) => readFileSync(path.join(root, file), 'utf8');

// The file and every header of ours that it reaches.
function reach(file, seen = new Set()) {
  if (seen.has(file) || !existsSync(path.join(root, file))) return seen;
  seen.add(file);
  for (const [, header] of read(file).matchAll(/^\s*#\s*include\s*"([^"]+)"/gm)) reach(header, seen);
  return seen;
}

function mark_of(file, rules) {
  const hash = createHash('sha256').update(rules);
  for (const each of [...reach(file)].sort()) hash.update(each).update(read(each));
  return path.join(marks, hash.digest('hex'));
}

// File -> the flags it is built with.
function flags_by_file() {
  const flags = new Map();
  for (const { file, command } of JSON.parse(readFileSync(path.join(build, 'compile_commands.json'), 'utf8'))) {
    const [, ...words] = command.split(' -o ')[0].replaceAll('\\"', '"').split(' ');
    flags.set(path.relative(root, file), words.join(' '));
  }
  return flags;
}

// What clang-tidy says of these files as one; '' when nothing.
async function complaints(name, files, flags) {
  const unit = path.join(marks, `${name}.cpp`);
  // Programs go together, too: each with a main of another name.
  writeFileSync(unit, files.map((file, n) => {
    const line = `#include "${path.join(root, file)}"  // NOLINT\n`;
    return k_main.test(read(file)) ? `#define main main_${n}\n${line}#undef main\n` : line;
  }).join(''));
  try {
    await run('clang-tidy', ['--quiet', unit, '--', ...flags.split(' '), '-Wno-unknown-warning-option'], { cwd: root, maxBuffer: 1 << 26 });
    return '';
  } catch (error) {
    return error.stdout || error.message;
  }
}

// How many of the files have findings.
async function look_at(group, name) {
  const together = await complaints(name, group.files, group.flags);
  let found = 0;
  for (const [n, file] of group.files.entries()) {
    const alone = together === '' || group.files.length === 1 ? together : await complaints(`${name}-${n}`, [file], group.flags);
    if (alone === '') writeFileSync(group.marks[n], '');
    else found += 1;
    if (alone !== '') console.error(alone);
  }
  return found;
}

mkdirSync(marks, { recursive: true });
const rules = read('.clang-tidy') + execFileSync('clang-tidy', ['--version']);
const files = execFileSync('git', ['ls-files', '--', ...k_wanted], { cwd: root, encoding: 'utf8' })
  .split('\n').filter((file) => file && !k_not.test(file));
const flags = flags_by_file();
// What only Emscripten compiles is seen as its neighbours are.
const flagsOf = (file) => flags.get(file) ?? flags.get([...flags.keys()].find((other) => path.dirname(other) === path.dirname(file)));
const changed = files.map((file) => ({ file, mark: mark_of(file, rules), text: read(file).replace(k_main, 'int program('), flags: flagsOf(file) }))
  .filter(({ mark }) => !existsSync(mark));
const headers = execFileSync('git', ['ls-files', '--', 'core/*.h', 'web/*.h'], { cwd: root, encoding: 'utf8' }).trim().split('\n');
const groups = groupsOf(changed, headers.flatMap((file) => publicNames(read(file))), k_together);
let [found, left] = [0, groups.length];
const queue = groups.entries();
await Promise.all(Array.from({ length: availableParallelism() }, async () => {
  for (const [n, group] of queue) {
    const with_findings = await look_at(group, `unit-${n}`);
    found += with_findings;
    left -= 1;
    if (left % 5 === 0) console.log(`   ${left} groups of files to go`);
  }
}));
console.log(`clang-tidy: ${files.length} files, ${changed.length} looked at in ${groups.length} groups, ${found} with findings`);
process.exitCode = found > 0 ? 1 : 0;
