// The educator's desk: a window to paste codes into and to pick or drop files, then their text in chunks. Loaded
// when first asked for (asked.js); what reads QR codes (scan.js) when first wanted. Must not know what a code says: it
// only cuts at line ends and bounds lengths.

import './desk.css';
import { isPicture } from './picture_size.js';
import { bringStyle } from './style_sheet.js';

const PART = 65_536;              // bytes of a file read at a time
const MOST_LINE = 262_144;        // a longer line is cut
const MOST_RUN = 262_144;         // bytes of one run as JSON (core/exchange/run_json.h)
const MOST_FILES = 20_000;
const MOST_BYTES = 268_435_456;   // of one file of codes: a million results and more

// Letters in one piece; the app says how many it can take without keeping anybody waiting.
let chunk = 2_048;

// What is to be read, piece by piece: an async generator of {kind, line, source, text, read}. `read`: bytes so far.
async function* piecesOfText(stream, source, before) {
  let [line, carry, read] = [1, '', before];
  for await (const part of stream) {
    read += part.bytes;
    carry += part.text;
    while (carry.length > chunk || (part.last && carry !== '')) {
      let end = carry.lastIndexOf('\n', chunk - 1) + 1;
      if (end === 0 && part.last && carry.length <= chunk) end = carry.length;
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

// The QR codes in a picture: {kind, text}.
async function codesOf(file) {
  const scan = await import('./scan.js').catch(() => undefined);
  return scan ? scan.codesOf(file) : { kind: 'no-reader', text: '' };
}

async function* piecesOfFile(file, before) {
  const source = file.name.replace(/[\x00-\x1f]/g, ' ').slice(0, 100);
  const read = before + file.size;
  const isLong = { kind: 'long', line: 0, source, text: '', read };
  if (await isPicture(file)) return yield { line: 0, source, read, ...await codesOf(file) };
  if (isRun(await file.slice(0, 256).text())) {
    if (file.size > MOST_RUN) yield isLong;
    else yield { kind: 'run', line: 0, source, text: (await file.text()).replace(/^\uFEFF/, ''), read };
  } else if (file.size > MOST_BYTES) {
    yield isLong;
  } else {
    yield* piecesOfText(partsOfFile(file), source, before);
  }
}

// scanned: {texts, source} of the camera.
export async function* pieces({ pasted, source, files, scanned }) {
  let before = 0;
  if (isRun(pasted)) {
    const kind = pasted.length > MOST_RUN ? 'long' : 'run';
    yield { kind, line: 0, source, text: kind === 'run' ? pasted : '', read: pasted.length };
  } else if (pasted !== '') {
    yield* piecesOfText([{ text: pasted, bytes: pasted.length, last: true }], source, 0);
  }
  before += pasted.length;
  if (scanned?.texts.length > 0) {
    yield { kind: 'codes', line: 0, source: scanned.source, text: scanned.texts.join('\n'), read: before };
  }
  for (const file of files.slice(0, MOST_FILES)) {
    yield* piecesOfFile(file, before);
    before += file.size;
  }
}

let heap;     // the generator that is being read
let heapSize; // bytes in it

// A task of its own for each piece, so that taps and frames come in between. No timer: those wait in a hidden tab.
const breathe = () => new Promise((done) => {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => { port1.close(); done(); };
  port2.postMessage('');
});

// One piece as web/screens/desk_state.h takes it.
async function next(letters) {
  chunk = Number(letters);
  await breathe();
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

// Sentences of web/screens/desk_read.cpp, in its order: of the window, and of the camera.
const WORDS = ['title', 'text', 'files', 'drop', 'go', 'cancel', 'pasted', 'picked', 'scan'];
const SCAN_WORDS = ['title', 'lead', 'wait', 'ready', 'count', 'private', 'stop', 'source', 'refused', 'none', 'busy', 'not-here', 'offline'];

function readWords(text) {
  const lines = text.split('\n');
  const named = (names) => Object.fromEntries(names.map((name) => [name, lines.shift() ?? '']));
  return { ...named(WORDS), camera: named(SCAN_WORDS) };
}

function makeWindow(words) {
  const text = make('textarea', { id: 'desk-text', rows: 4, spellcheck: false, autocomplete: 'off', autocapitalize: 'off' });
  const picker = make('input', { type: 'file', id: 'desk-files', multiple: true });
  const told = make('p', { id: 'desk-told' });
  told.setAttribute('role', 'status');
  const scan = make('button', { type: 'button', textContent: words.scan });
  const go = make('button', { type: 'submit', className: 'main', textContent: words.go });
  const stop = make('button', { type: 'button', textContent: words.cancel });
  const form = make('form', { method: 'dialog' }, [
    make('h2', { id: 'desk-window-title', textContent: words.title }),
    make('label', { htmlFor: 'desk-text', textContent: words.text }), text,
    make('label', { htmlFor: 'desk-files', textContent: words.files }), picker,
    make('p', { textContent: words.drop }), scan, told, go, stop]);
  const frame = make('dialog', { id: 'desk-window' }, [form]);
  frame.setAttribute('aria-labelledby', 'desk-window-title');
  return { frame, form, text, picker, told, scan, stop, words };
}

// Dropped files come in beside those picked.
function takeDrops({ frame, told, words }, dropped) {
  frame.addEventListener('dragover', (event) => event.preventDefault());
  frame.addEventListener('drop', (event) => {
    if (event.dataTransfer.files.length === 0) return;  // words dropped into the text
    event.preventDefault();
    dropped.push(...event.dataTransfer.files);
    told.textContent = `${words.picked} ${dropped.length}`;
  });
}

// What the camera read; [] when it read nothing, and the window says why where there is a reason.
async function scanFrom({ frame, told, words }) {
  told.textContent = '';
  const part = await import('./scan.js').catch(() => undefined);
  if (!frame.open) return [];  // closed meanwhile
  const found = part ? await part.scanByCamera(words.camera) : { texts: [], told: words.camera.offline };
  told.textContent = found.told;
  return found.texts;
}

// As a press of the button for it: with the codes, once there are some; else the window stays.
function takeScans(view, done) {
  let busy = false;
  view.scan.addEventListener('click', async () => {
    if (busy) return;
    busy = true;
    const texts = await scanFrom(view).finally(() => { busy = false; });
    if (texts.length > 0) done(texts);
  });
}

// Resolves with 'read' once there is something to read, or '' when the window was closed.
async function ask(text) {
  const words = readWords(text), { link, isHere } = bringStyle('./desk.css');
  await isHere.catch(() => {});  // plain, but it works
  const view = makeWindow(words), dropped = [];
  takeDrops(view, dropped);
  // The page's own keys (scrolling, Escape) are not for what stands in this window.
  view.frame.addEventListener('keydown', (event) => event.stopPropagation());
  document.body.append(view.frame);
  const texts = await new Promise((done) => {
    view.form.addEventListener('submit', () => done([]));
    takeScans(view, done);
    view.stop.addEventListener('click', () => view.frame.close());
    view.frame.addEventListener('close', () => done(undefined));
    view.frame.showModal();
  });
  const files = [...view.picker.files, ...dropped], pasted = view.text.value;
  view.frame.close();
  view.frame.remove();
  link.remove();
  if (!texts || (texts.length === 0 && files.length === 0 && pasted.trim() === '')) return '';
  heapSize = pasted.length + files.reduce((sum, file) => sum + file.size, 0);
  heap = pieces({ pasted, source: words.pasted, files, scanned: { texts, source: words.camera.source } });
  return 'read';
}

export const services = { deskAsk: ask, deskNext: next };
