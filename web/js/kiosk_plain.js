// What a shared device shows when it stopped too often: the steps of each kind of inhaler in plain elements, and a code
// to do the check on one's own phone. Needs neither WASM nor a canvas. Must not know why it stopped.

import { fetchBytes } from './fetch_text.js';
import { qrLines } from './hand_over.js';

const QUIET = 4;  // light modules around a code (ISO/IEC 18004)

const read = async (path) => JSON.parse(new TextDecoder().decode(await fetchBytes(path)));

function make(tag, fields = {}, ...children) {
  const element = Object.assign(document.createElement(tag), fields);
  element.append(...children);
  return element;
}

function picture(text, name) {
  const rows = qrLines(text).split('\n');
  const side = rows.length + 2 * QUIET;
  const svg = (tag, attributes) => {
    const element = document.createElementNS('http://www.w3.org/2000/svg', tag);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
    return element;
  };
  const dark = rows.flatMap((row, y) => [...row].flatMap((module, x) => (module === '1' ? [`M${x + QUIET} ${y + QUIET}h1v1h-1z`] : [])));
  const image = svg('svg', { viewBox: `0 0 ${side} ${side}`, width: 240, height: 240, role: 'img', 'aria-label': name, 'shape-rendering': 'crispEdges' });
  image.append(svg('rect', { width: side, height: side, fill: '#fff' }), svg('path', { d: dark.join(''), fill: '#000' }));
  return image;
}

async function stepsOf(family, language) {
  const folder = `content/families/${family}`;
  const [procedure, text] = await Promise.all([read(`${folder}/procedure.json`), read(`${folder}/text.${language}.json`)]);
  return [make('h2', { textContent: text.name }),
    make('ol', {}, ...procedure.ideal.map((action) => make('li', { textContent: text.actions[action].label })))];
}

// panel: the page's own error panel, which is on show.
export async function showPlain(panel, language = 'en') {
  const [library, { kiosk: words }] = await Promise.all([read('content/library.json'), read(`content/text/${language}.json`)]);
  const steps = await Promise.all(library.families.map((family) => stepsOf(family, language)));
  const own = location.protocol === 'file:' ? []
    : [make('p', { textContent: words['plain-scan'] }), picture(location.href.replace(/[?#].*/s, ''), words['plain-scan'])];
  const title = make('h1', { textContent: words['plain-title'], tabIndex: -1 });
  panel.replaceChildren(title, make('p', { textContent: words['plain-lead'] }), ...own, ...steps.flat(),
    make('p', { textContent: words['plain-leaflet'] }));
  panel.lang = language;
  document.title = words['plain-title'];
  title.focus();
}
