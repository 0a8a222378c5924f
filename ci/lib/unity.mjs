// Which of a target's files are compiled as one, as CMake's variable: one line a group, its files parted by ";".
// usage: unity.mjs ROOT FILE...
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { groupsOf, publicTypes } from './file_groups.mjs';

const [root, ...files] = process.argv.slice(2);
const read = (file) => readFileSync(path.join(root, file), 'utf8');
const headers = execFileSync('git', ['ls-files', '--', 'core/*.h', 'web/*.h'], { cwd: root, encoding: 'utf8' }).trim().split('\n');
const types = headers.flatMap((file) => publicTypes(read(file)));
const groups = groupsOf(files.map((file) => ({ file, text: readFileSync(file, 'utf8'), flags: '', mark: '' })), types);
console.log(groups.map((group) => group.files.join(';')).filter((line) => line.includes(';')).join('\n'));
