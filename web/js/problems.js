// Words for what can keep the page from running. Plain sentences; the panel itself is boot.js's.

import { FetchError } from './fetch_text.js';
import { LaterError } from './later.js';

const PROBLEMS = {
  wasm: ['Your browser cannot run this page.', 'Please update your browser, or use another one.'],
  webgl: ['Your browser cannot draw this page.',
    'Turn on WebGL in its settings. Or use another browser.'],
  gone: ['The picture went away and did not come back.', 'Load the page again to go on.'],
  missing: ['A part of this page did not arrive.', 'Check that you are online. Then load the page again.'],
  memory: ['There is no room left for this page.', 'Close other pages or apps. Then load this one again.'],
  trap: ['This page has stopped.', 'Please load it again. You may have to start over.'],
};

export function showProblem(kind, error) {
  window.rehale.showProblem(...PROBLEMS[kind], String(error?.stack ?? error ?? '').slice(0, 2000));
}

export function kindOfCrash(error) {
  const words = String(error?.message ?? error);
  if (words.startsWith('shaders:')) return 'webgl';
  if (error instanceof LaterError) return 'missing';
  return /out of memory|oom|cannot enlarge|memory allocation/i.test(words) || error instanceof RangeError
    ? 'memory' : 'trap';
}

export function kindOfStart(error) {
  if (error instanceof FetchError) return 'missing';
  if (error instanceof WebAssembly.CompileError || error instanceof WebAssembly.LinkError) return 'wasm';
  return kindOfCrash(error) === 'memory' ? 'memory' : 'wasm';
}
