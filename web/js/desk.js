// The educator's desk: a window to paste codes into and to pick or drop files, then their text in chunks. Loaded
// when first asked for (asked.js). Must not know what a code says: it only cuts at line ends and bounds lengths.

import './desk.css';

const CHUNK = 8_192;              // letters in one piece: some 50 results, a tenth of a second
const PART = 65_536;              // bytes of a file read at a time
const MOST_LINE = 262_144;        // a longer line is cut
const MOST_RUN = 262_144;         // bytes of one run as JSON (core/exchange/run_json.h)
const MOST_FILES = 20_000;
const MOST_BYTES = 268_435_456;   // of one file of codes: a million results and more

// What is to be read, piece by piece: an async generator of {kind, line, source, text, read}. `read`: bytes so far.
async function* piecesOfText(stream, source, before) {
  let [line, carry, read] = [1, '', before];
  for await (const part of stream) {
    read += part.bytes;
    carry += part.text;
    while (carry.length > CHUNK || (part.last && carry !== '')) {
      let end = carry.lastIndexOf('\n', CHUNK - 1) + 1;
      if (end === 0 && part.last && carry.length <= CHUNK) end = carry.length;
      if (end === 0) {
        end = carry.indexOf('\n') + 1;
        if (end === 0 && carry.length < MOST_LINE && !part.last) break;  // the line's end is still to come
        if (end === 0 || end > MOST_LINE) end = Math.min(carry.length, MOST_LINE);
      }
      const text = carry.slice(0, end);
      carry = carry.slice(end);
      yield { kind: 'text', line, source, text, read };
      line += text.split('\n').length - 1;
    }
  }
}

async function* partsOfFile(file) {
  const decoder = new TextDecoder();
  for (let at = 0; at < file.size; at += PART) {
    const end = Math.min(file.size, at + PART);
    const bytes = await file.slice(at, end).arrayBuffer();
    yield { text: decoder.decode(bytes, { stream: end < file.size }), bytes: end - at, last: end === file.size };
  }
}

const isRun = (text) => /^\uFEFF?\s*\{/.test(text);

async function* piecesOfFile(file, before) {
  const source = file.name.replace(/[\x00-\x1f]/g, ' ').slice(0, 100);
  const read = before + file.size;
  const isLong = { kind: 'long', line: 0, source, text: '', read };
  if (isRun(await file.slice(0, 256).text())) {
    if (file.size > MOST_RUN) yield isLong;
    else yield { kind: 'run', line: 0, source, text: (await file.text()).replace(/^\uFEFF/, ''), read };
  } else if (file.size > MOST_BYTES) {
    yield isLong;
  } else {
    yield* piecesOfText(partsOfFile(file), source, before);
  }
}

export async function* pieces({ pasted, source, files }) {
  let before = 0;
  if (isRun(pasted)) {
    const kind = pasted.length > MOST_RUN ? 'long' : 'run';
    yield { kind, line: 0, source, text: kind === 'run' ? pasted : '', read: pasted.length };
  } else if (pasted !== '') {
    yield* piecesOfText([{ text: pasted, bytes: pasted.length, last: true }], source, 0);
  }
  before += pasted.length;
  for (const file of files.slice(0, MOST_FILES)) {
    yield* piecesOfFile(file, before);
    before += file.size;
  }
}

let heap;     // the generator that is being read
let heapSize; // bytes in it

// One piece as web/screens/desk_state.h takes it.
async function next() {
  const { value, done } = heap ? await heap.next() : { done: true };
  if (done) { heap = undefined; return 'end 1000 0 -\n'; }
  const permille = Math.min(1000, Math.round((1000 * value.read) / Math.max(1, heapSize)));
  return `${value.kind} ${permille} ${value.line} ${value.source}\n${value.text}`;
}

function make(tag, facts = {}, children = []) {
  const element = Object.assign(document.createElement(tag), facts);
  element.append(...children);
  return element;
}

// words: title, label of the text, label of the files, where to drop, read, cancel, name of what was pasted, "files: ".
function makeWindow([title, label, files, drop, read, cancel, , count]) {
  const text = make('textarea', { id: 'desk-text', rows: 4, spellcheck: false, autocomplete: 'off', autocapitalize: 'off' });
  const picker = make('input', { type: 'file', id: 'desk-files', multiple: true });
  const told = make('p', { id: 'desk-told' });
  told.setAttribute('role', 'status');
  const go = make('button', { type: 'submit', className: 'main', textContent: read });
  const stop = make('button', { type: 'button', textContent: cancel });
  const form = make('form', { method: 'dialog' }, [
    make('h2', { id: 'desk-window-title', textContent: title }),
    make('label', { htmlFor: 'desk-text', textContent: label }), text,
    make('label', { htmlFor: 'desk-files', textContent: files }), picker,
    make('p', { textContent: drop }), told, go, stop]);
  const frame = make('dialog', { id: 'desk-window' }, [form]);
  frame.setAttribute('aria-labelledby', 'desk-window-title');
  return { frame, form, text, picker, told, stop, count };
}

// A file of its own, not words put into the page: the strictest content policy forbids those.
function bringStyle() {
  if (document.getElementById('desk-style')) return Promise.resolve();
  const link = make('link', { id: 'desk-style', rel: 'stylesheet', href: new URL('./desk.css', import.meta.url).href });
  return new Promise((done, failed) => {
    link.onload = done;
    link.onerror = () => { link.remove(); failed(new Error('the style of the window did not arrive')); };
    document.head.append(link);
  });
}

// Dropped files come in beside those picked.
function takeDrops({ frame, told, count }, dropped) {
  frame.addEventListener('dragover', (event) => event.preventDefault());
  frame.addEventListener('drop', (event) => {
    if (event.dataTransfer.files.length === 0) return;  // words dropped into the text
    event.preventDefault();
    dropped.push(...event.dataTransfer.files);
    told.textContent = `${count} ${dropped.length}`;
  });
}

// Resolves with 'read' once there is something to read, or '' when the window was closed.
async function ask(words) {
  await bringStyle();
  const parts = words.split('\n');
  const view = makeWindow(parts), dropped = [];
  takeDrops(view, dropped);
  // The page's own keys (scrolling, Escape) are not for what stands in this window.
  view.frame.addEventListener('keydown', (event) => event.stopPropagation());
  document.body.append(view.frame);
  const answer = await new Promise((done) => {
    view.form.addEventListener('submit', () => done('read'));
    view.stop.addEventListener('click', () => view.frame.close());
    view.frame.addEventListener('close', () => done(''));
    view.frame.showModal();
  });
  const files = [...view.picker.files, ...dropped], pasted = view.text.value;
  view.frame.remove();
  if (answer === '' || (files.length === 0 && pasted.trim() === '')) return '';
  heapSize = pasted.length + files.reduce((sum, file) => sum + file.size, 0);
  heap = pieces({ pasted, source: parts[6], files });
  return 'read';
}

export const services = { deskAsk: ask, deskNext: next };
