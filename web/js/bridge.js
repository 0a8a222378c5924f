// The wire between the page and the WASM module: calls both ways, texts as UTF-8 bytes. A call that traps
// ends the app: crashed() is told once and no further call is made. Must not know what the texts mean.

const TELL = ['askFrame', 'askWake', 'mirror', 'focus', 'announce', 'fetch', 'stop', 'reload', 'noMemory', 'ask'];  // page_calls.h
const HEAR = ['option', 'language', 'fontRegular', 'fontBold', 'fetched', 'fetchFailed', 'press',
  'setNumber', 'focus', 'dismiss', 'scroll', 'redraw', 'error', 'voice'];                       // host_web.cpp
export const SEPARATOR = '\x1f';

const decoder = new TextDecoder();
const encoder = new TextEncoder();

export class Bridge {
  // handlers: one function for each name in TELL, (text, number).
  constructor({ handlers, crashed }) {
    this.handlers = TELL.map((name) => handlers[name]);
    this.crashed = crashed;
    this.alive = false;  // until connect, and after a trap
  }

  connect(wasm) {
    this.wasm = wasm;
    this.alive = true;
  }

  tell(what, text, size, number) {
    this.handlers[what](decoder.decode(this.wasm.HEAPU8.subarray(text, text + size)), number);
  }

  call(name, ...numbers) {
    if (!this.alive) return undefined;
    try {
      return this.wasm[`_rehale_${name}`](...numbers);
    } catch (error) {
      this.alive = false;
      this.crashed(error);
      return undefined;
    }
  }

  // text: a string, or bytes.
  hear(what, text = '', number = 0) {
    const bytes = typeof text === 'string' ? encoder.encode(text) : text;
    const at = this.call('room', bytes.length);
    if (at === undefined) return;
    this.wasm.HEAPU8.set(bytes, at);
    this.call('hear', HEAR.indexOf(what), number);
  }

  // What an exported function returns as a C string.
  text(name) {
    const at = this.call(name);
    if (at === undefined) return '';
    const { HEAPU8 } = this.wasm;
    return decoder.decode(HEAPU8.subarray(at, HEAPU8.indexOf(0, at)));
  }

  get heapBytes() { return this.wasm?.HEAPU8.length ?? 0; }
}
