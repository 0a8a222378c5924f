// Which of a target's files are compiled as one, as CMake's variable: one line a group, its files parted by ";".
// usage: unity.mjs ROOT FILE...
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { groupsOf, publicNames } from './file_groups.mjs';

const [root, ...files] = process.argv.slice(2);
const headers = ['core', 'web'].flatMap((folder) => readdirSync(path.join(root, folder), { recursive: true })
  .filter((file) => file.endsWith('.h')).map((file) => path.join(root, folder, file)));
const names = headers.flatMap((file) => publicNames(readFileSync(file, 'utf8')));
const groups = groupsOf(files.map((file) => ({ file, text: readFileSync(file, 'utf8'), flags: '', mark: '' })), names);
console.log(groups.map((group) => group.files.join(';')).filter((line) => line.includes(';')).join('\n'));
