// clang-tidy over our own sources, two files at a time. A file is looked at again only when it, a header
// of ours that it includes, or the rules have changed. usage: tidy.mjs ROOT BUILD_WITH_COMPILE_COMMANDS MARKS
import { execFile, execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';

const [root, build, marks] = process.argv.slice(2);
const run = promisify(execFile);
// The browser's half of the shell is compiled by Emscripten alone, which clang-tidy cannot follow.
const k_wanted = ['core/*.cpp', 'web/*.cpp', 'tests/support/*.cpp', 'tests/tools/*.cpp'];
const k_not = /_web\.cpp$|^web\/main\.cpp$/;

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

// The commands of the build without its precompiled headers: those are g++'s, which clang cannot read.
function write_commands() {
  const commands = readFileSync(path.join(build, 'compile_commands.json'), 'utf8')
    .replaceAll(/ -include .*?cmake_pch\.hxx(?:\\")?/g, '').replaceAll(' -Winvalid-pch', '');
  writeFileSync(path.join(marks, 'compile_commands.json'), commands);
}

async function look_at(file, mark) {
  try {
    await run('clang-tidy', ['--quiet', '--extra-arg=-Wno-unknown-warning-option', '-p', marks, file], { cwd: root, maxBuffer: 1 << 26 });
    writeFileSync(mark, '');
    return true;
  } catch (error) {
    console.error(error.stdout || error.message);
    return false;
  }
}

mkdirSync(marks, { recursive: true });
write_commands();
const rules = read('.clang-tidy') + execFileSync('clang-tidy', ['--version']);
const files = execFileSync('git', ['ls-files', '--', ...k_wanted], { cwd: root, encoding: 'utf8' })
  .split('\n').filter((file) => file && !k_not.test(file));
const changed = files.map((file) => [file, mark_of(file, rules)]).filter(([, mark]) => !existsSync(mark));
let found = 0;
let left = changed.length;
const queue = changed.values();
await Promise.all(Array.from({ length: availableParallelism() }, async () => {
  for (const [file, mark] of queue) {
    if (!(await look_at(file, mark))) found += 1;
    left -= 1;
    if (left % 10 === 0) console.log(`   ${left} files to go`);
  }
}));
console.log(`clang-tidy: ${files.length} files, ${changed.length} looked at, ${found} with findings`);
process.exitCode = found > 0 ? 1 : 0;
