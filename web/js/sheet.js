// One page of paper: written as real elements when asked for, printed, taken away again. Each line of `words`
// is a kind, a space, a text (web/screens/sheet.h). Must not know what the sentences mean.

import { bringStyle } from './style_sheet.js';

const TAGS = {
  title: 'h1', fact: 'p', section: 'h2', item: 'h3', why: 'p', how: 'p', well: 'li', script: 'p', ask: 'p',
  tick: 'span', caution: 'li', foot: 'p', qr: '',
};
const LISTS = { well: 'ul', caution: 'ul', tick: 'div' };
const QUIET = 4;  // modules around a QR code, ISO/IEC 18004 (facts/users.md 5.4)

export function drawCode(lines) {
  const rows = lines.split('\n');
  const side = rows.length + 2 * QUIET;
  const path = rows.flatMap((row, y) => [...row.matchAll(/1+/g)]
    .map((run) => `M${run.index + QUIET} ${y + QUIET}h${run[0].length}v1h-${run[0].length}z`)).join('');
  const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  const shape = document.createElementNS('http://www.w3.org/2000/svg', 'path');
  for (const [name, value] of [['viewBox', `0 0 ${side} ${side}`], ['class', 'qr'], ['shape-rendering', 'crispEdges']]) {
    svg.setAttribute(name, value);
  }
  shape.setAttribute('d', path);
  svg.append(shape);
  return svg;
}

export function makeSheet(words, qrLines) {
  const sheet = document.createElement('article');
  sheet.id = 'sheet';
  let list;
  for (const line of words.split('\n').filter((text) => text !== '')) {
    const kind = line.slice(0, line.indexOf(' '));
    const text = line.slice(kind.length + 1);
    if (!(kind in TAGS)) throw new Error(`a sheet has no ${kind}`);
    if (kind === 'qr') { sheet.append(drawCode(qrLines(text))); continue; }
    if (LISTS[kind] === undefined) list = undefined;
    else if (list?.className !== kind) {
      list = document.createElement(LISTS[kind]);
      list.className = kind;
      sheet.append(list);
    }
    const element = document.createElement(TAGS[kind]);
    element.textContent = text;
    if (list === undefined) element.className = kind;
    (list ?? sheet).append(element);
  }
  return sheet;
}

let takeAway = () => {};

// Prints an element, which is on the page for as long as that takes.
export async function printSheet(sheet) {
  takeAway();
  const { link, isHere } = bringStyle('./hand_over.css');  // ci/lib/bundle.mjs makes it of sheet.css
  takeAway = () => {
    removeEventListener('afterprint', takeAway);
    link.remove();
    sheet.remove();
  };
  addEventListener('afterprint', takeAway);
  try {
    await isHere;
  } catch (error) {
    takeAway();
    throw error;
  }
  document.body.append(sheet);
  print();
  return '';
}
