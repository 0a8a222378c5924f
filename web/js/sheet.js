// One page of paper: written as real elements when asked for, printed, taken away again. Each line of `words`
// is a kind, a space, a text (web/screens/sheet.h). Must not know what the sentences mean.

const TAGS = {
  title: 'h1', fact: 'p', section: 'h2', item: 'h3', why: 'p', how: 'p', well: 'li', script: 'p', ask: 'p',
  tick: 'span', caution: 'li', foot: 'p', qr: '',
};
const LISTS = { well: 'ul', caution: 'ul', tick: 'div' };
const QUIET = 4;  // modules around a QR code, ISO/IEC 18004 (facts/users.md 5.4)

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

// A file of its own, not words put into the page: the strictest content policy forbids those.
function bringStyle() {
  const link = document.createElement('link');
  link.rel = 'stylesheet';
  link.href = new URL('./hand_over.css', import.meta.url).href;  // ci/lib/bundle.mjs makes it of sheet.css
  const isHere = new Promise((done, failed) => {
    link.onload = done;
    link.onerror = () => failed(new Error('the style of the sheet did not arrive'));
  });
  document.head.append(link);
  return { link, isHere };
}

export async function printSheet(words, qrLines) {
  takeAway();
  const sheet = makeSheet(words, qrLines);
  const { link, isHere } = bringStyle();
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
