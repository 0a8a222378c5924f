// What a person lets their own device keep, as one text in IndexedDB; and a file they pick. Loaded when first asked
// for (asked.js). Nothing is made by looking. Must not know what the text says.

const NAME = 'rehale', STORE = 'kept', KEY = 'all';
const MOST_LETTERS = 200 * 1024;  // as core/exchange/kept.h
const WITHIN_MS = 5000;           // some browsers never answer

const settled = (request) => new Promise((done, failed) => {
  request.onsuccess = () => done(request.result);
  request.onerror = () => failed(request.error);
  request.onblocked = () => failed(new Error('another tab holds it'));
});

// undefined: there is none, and none was wanted.
function openStore({ make }) {
  const request = indexedDB.open(NAME, 1);
  let isNew = false;
  request.onupgradeneeded = () => {
    isNew = true;
    if (make) request.result.createObjectStore(STORE);
    else request.transaction.abort();
  };
  return settled(request).catch((error) => {
    if (isNew && !make) return undefined;
    throw error;
  });
}

async function kept() {
  const store = await openStore({ make: false });
  if (store === undefined) return '';
  try {
    const text = await settled(store.transaction(STORE).objectStore(STORE).get(KEY));
    if (text === undefined) return '';
    if (typeof text !== 'string' || text.length > MOST_LETTERS) return '?';  // nothing of ours: told as such
    return text;
  } finally {
    store.close();
  }
}

async function keepResults(text) {
  const store = await openStore({ make: true });
  try {
    const writing = store.transaction(STORE, 'readwrite');
    writing.objectStore(STORE).put(text, KEY);
    await new Promise((done, failed) => {  // on the disk, not only taken
      writing.oncomplete = () => done();
      writing.onabort = () => failed(writing.error ?? new Error('not written'));
    });
  } finally {
    store.close();
  }
  return '';
}

async function forget() {
  await settled(indexedDB.deleteDatabase(NAME));
  return '';
}

function open() {
  const input = Object.assign(document.createElement('input'), { type: 'file', accept: '.json,.txt,application/json' });
  return new Promise((done, failed) => {
    input.onchange = () => {
      const [file] = input.files;
      if (file === undefined || file.size > MOST_LETTERS) failed(new Error('too large'));
      else file.text().then(done, failed);
    };
    input.oncancel = () => done('');
    input.click();
  });
}

const soon = (work) => (words) => Promise.race([work(words), new Promise((_, failed) => {
  setTimeout(() => failed(new Error('no answer')), WITHIN_MS);
})]);

export const services = { kept: soon(kept), keepResults: soon(keepResults), forget: soon(forget), open };
