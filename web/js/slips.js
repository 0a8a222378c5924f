// Slips of paper to give away, each with a link as a QR code: one large, or many on a sheet to cut up. Lines are
// "kind text" (web/screens/slips.h): count, qr, title, line, name. Must not know what the sentences mean.

import { drawCode } from './sheet.js';

const TAGS = { title: 'h2', line: 'p', name: 'p', step: 'p', foot: 'p' };

export function makeSlips(words, qrLines) {
  const slip = document.createElement('section');
  const told = document.createElement('div');
  let count = 1;
  for (const line of words.split('\n').filter((text) => text !== '')) {
    const kind = line.slice(0, line.indexOf(' '));
    const text = line.slice(kind.length + 1);
    if (kind === 'count') {
      count = Number(text);
    } else if (kind === 'qr') {
      slip.append(drawCode(qrLines(text)));
    } else if (kind in TAGS) {
      const element = document.createElement(TAGS[kind]);
      element.className = kind;
      element.textContent = text;
      told.append(element);
    } else {
      throw new Error(`a slip has no ${kind}`);
    }
  }
  slip.append(told);
  const sheet = document.createElement('article');
  sheet.id = 'sheet';
  sheet.className = count > 1 ? 'slips many' : 'slips';
  for (let n = 0; n < count; n += 1) sheet.append(slip.cloneNode(true));
  return sheet;
}
