// Gets the WASM module and the fonts, at the same time. Rejects with a FetchError or an error of
// WebAssembly's own.

import createModule from 'rehale-wasm';  // ci/build points this at Emscripten's output

import { fetchBytes, fetchFile } from './fetch_text.js';

async function instantiate(imports) {
  const response = await fetchFile('rehale.wasm');
  if (response.headers.get('content-type')?.startsWith('application/wasm')) {
    return WebAssembly.instantiateStreaming(response, imports);
  }
  return WebAssembly.instantiate(await response.arrayBuffer(), imports);
}

// page: what web/shell/page_calls.js calls. later: the part that comes after. The module is handed out
// before its main() is run.
export function loadModule(page, later, { onAbort, onPrint }) {
  return new Promise((resolve, reject) => {
    const options = {
      page, onAbort, print: onPrint, printErr: onPrint,
      instantiateWasm(imports, receive) {
        instantiate(later.imports(imports)).then(({ instance, module }) => {
          later.connect(instance.exports);
          receive(instance, module);
        }).catch(reject);
        return {};
      },
    };
    createModule(options).then(resolve, reject);
  });
}

export function loadFonts() {
  return Promise.all(['fonts/regular.ttf', 'fonts/bold.ttf'].map(fetchBytes));
}
