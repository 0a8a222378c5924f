// A result or a set practice to hand over: as a QR code, to the clipboard, as a file, on paper. Loaded when first asked for
// (asked.js). Every service takes a text and gives one back. Must not know what a result says.

import qrcode from 'qrcode-generator';

import './sheet.css';
import { saveFile } from './save_file.js';
import { makeSheet, printSheet } from './sheet.js';
import { makeSlips } from './slips.js';

// Lines of 0 and 1, dark is 1, without the quiet zone; the smallest version at level M that holds it.
export function qrLines(text) {
  const code = qrcode(0, 'M');
  code.addData(text, 'Byte');
  code.make();
  const places = Array.from({ length: code.getModuleCount() }, (_, n) => n);
  return places.map((row) => places.map((column) => (code.isDark(row, column) ? '1' : '0')).join('')).join('\n');
}

// navigator.clipboard is missing where the page is not secure; then the old way.
async function copy(text) {
  if (navigator.clipboard) {
    await navigator.clipboard.writeText(text);
    return '';
  }
  const box = document.createElement('textarea');
  box.value = text;
  document.body.append(box);
  box.select();
  const done = document.execCommand('copy');
  box.remove();
  if (!done) throw new Error('no clipboard here');
  return '';
}

// First line: the file's name; behind a semicolon its type, where it is not JSON.
function save(words) {
  const name = words.slice(0, words.indexOf('\n'));
  saveFile(name, words.slice(name.length + 1));
  return '';
}

export const services = {
  qr: qrLines, copy, save,
  print: (words) => printSheet(makeSheet(words, qrLines)),
  slips: (words) => printSheet(makeSlips(words, qrLines)),
};
