// The page's WASM without a browser: frames as soon as they are asked for, files from the disk, nothing
// drawn. For looking at what runs; tests use a real browser.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { Bridge, SEPARATOR } from '../../web/js/bridge.js';

const k_rest_ms = 20; // nothing asked for so long: it waits for the person
const nothing = () => {};

export class PageWithoutScreen {
  // missing: files that "do not arrive", by a part of their path.
  constructor(site, missing = []) {
    Object.assign(this, { site, missing, asked: [], wants_frame: false, frame: { screen: '', nodes: [] } });
    this.bridge = new Bridge({
      crashed: (error) => { throw error; },
      handlers: {
        askFrame: () => { this.wants_frame = true; },
        askWake: nothing, focus: nothing, announce: nothing,
        mirror: (text) => { this.frame = JSON.parse(text); },
        fetch: (file, ticket) => this.asked.push([file, ticket]),
        stop: (text) => { throw new Error(`the page stops: ${text}`); },
      },
    });
  }

  calls() {
    return {
      tell: (...parts) => this.bridge.tell(...parts), random: () => 1, texture: nothing, forgetTexture: nothing,
      drawBegin: nothing, drawList: nothing, drawCall: nothing,
    };
  }

  // wasm: bytes. loader: Emscripten's, a path. options as in the page's address.
  async open(wasm, loader, options, language = 'en') {
    const { default: make } = await import(pathToFileURL(path.resolve(loader)));
    const instantiateWasm = (imports, receive) => {
      WebAssembly.instantiate(wasm, imports).then(({ instance, module }) => {
        this.exports = instance.exports;
        receive(instance, module);
      });
      return {};
    };
    this.module = await make({ page: this.calls(), instantiateWasm });
    this.bridge.connect(this.module);
    for (const font of ['regular', 'bold']) {
      this.bridge.hear(font === 'bold' ? 'fontBold' : 'fontRegular', readFileSync(path.join(this.site, `fonts/${font}.ttf`)));
    }
    for (const option of options) this.bridge.hear('option', option);
    this.bridge.call('preferences', 0, 16);
    this.bridge.hear('language', language);
    this.bridge.call('viewport', 360, 640, 2);
    this.bridge.call('start');
    await this.rest();
  }

  answer([file, ticket]) {
    if (this.missing.some((part) => file.includes(part))) {
      this.bridge.hear('fetchFailed', ['network', file, 'could not be reached'].join(SEPARATOR), ticket);
    } else {
      this.bridge.hear('fetched', readFileSync(path.join(this.site, file)), ticket);
    }
  }

  async rest() {
    for (let quiet = false; !quiet;) {
      if (this.wants_frame) {
        this.wants_frame = false;
        this.bridge.call('frame');
      } else if (this.asked.length > 0) {
        this.answer(this.asked.shift());
      } else {
        await new Promise((done) => { setTimeout(done, k_rest_ms); });
        this.bridge.call('wake');
        quiet = !this.wants_frame && this.asked.length === 0;
      }
    }
  }

  async press(id) {
    this.bridge.hear('press', id);
    await this.rest();
  }

  // kind: 0 mouse, 1 touch, as in web/shell/host.h.
  async tap({ rect: [x, y, w, h] }, kind) {
    for (const what of [0, 1, 2]) {
      this.bridge.call('pointer', what, kind, x + w / 2, y + h / 2);
      await this.rest();
    }
  }
}
