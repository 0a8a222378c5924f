// One page of paper: written as real elements when asked for, printed, taken away again. Each line of `words`
// is a kind, a space, a text (web/screens/sheet.h). Must not know what the sentences mean.

const TAGS = {
  title: 'h1', fact: 'p', section: 'h2', item: 'h3', why: 'p', how: 'p', well: 'li', script: 'p', ask: 'p',
  tick: 'span', caution: 'li', foot: 'p', qr: '',
};
const LISTS = { well: 'ul', caution: 'ul', tick: 'div' };
const QUIET = 4;  // modules around a QR code, ISO/IEC 18004 (facts/users.md 5.4)

// 11 pt at the least; black on white; A4 and Letter both, so no size is named.
const STYLE = `
#sheet { display: none; }
@page { margin: 12mm; }
@media print {
  html, body { overflow: visible; height: auto; background: #fff; }
  body > :not(#sheet) { display: none !important; }
  #sheet { display: block; color: #000; background: #fff; font: 11pt/1.25 system-ui, sans-serif; }
  #sheet :is(h1, h2, h3, p, ul) { margin: 0; }
  #sheet h1 { font-size: 18pt; }
  #sheet h2 { font-size: 13pt; margin: 2.5mm 0 .8mm; border-bottom: .4mm solid #000; clear: none; }
  #sheet h3 { font-size: 12pt; margin-top: 1.2mm; break-after: avoid; }
  #sheet ul { padding-inline-start: 5mm; }
  #sheet .well { columns: 2; column-gap: 8mm; }
  #sheet li { break-inside: avoid; }
  #sheet .how { font-weight: 700; }
  #sheet .ask { margin-bottom: 8mm; }
  #sheet .tick { display: flex; flex-wrap: wrap; gap: 1mm 7mm; padding-top: .8mm; }
  #sheet .tick span::before {
    content: ''; display: inline-block; width: 3.6mm; height: 3.6mm; border: .4mm solid #000;
    margin-inline-end: 2mm; vertical-align: -.6mm;
  }
  #sheet .qr { float: inline-end; width: 44mm; height: 44mm; margin: -2mm -2mm 0 3mm; }
  #sheet .foot { margin-top: 2mm; }
}`;

function drawCode(lines) {
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

export function printSheet(words, qrLines) {
  takeAway();
  const style = document.createElement('style');
  style.textContent = STYLE;
  const sheet = makeSheet(words, qrLines);
  document.head.append(style);
  document.body.append(sheet);
  takeAway = () => {
    removeEventListener('afterprint', takeAway);
    style.remove();
    sheet.remove();
  };
  addEventListener('afterprint', takeAway);
  print();
  return '';
}
