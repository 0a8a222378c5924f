// Reads this version's files, which lie beside its scripts (boot.js says where). Every way it can go otherwise has a code and a sentence.

const WITHIN_MS = 30_000;

export class FetchError extends Error {
  constructor(code, path, detail) {
    super(`${path}: ${detail}`);
    Object.assign(this, { code, path, detail });
  }
}

// The response, once its headers are there and good.
export async function fetchFile(path) {
  const url = new URL(path, window.rehale.base);
  if (url.origin !== location.origin) throw new FetchError('outside', path, 'not a file of this page');
  const patience = new AbortController();
  const timer = setTimeout(() => patience.abort(), WITHIN_MS);  // for the headers; bodies may be slow
  let response;
  try {
    response = await fetch(url, { signal: patience.signal });
  } catch (error) {
    const slow = error?.name === 'AbortError';
    throw new FetchError('network', path, slow ? 'no answer within 30 s' : 'could not be reached');
  } finally {
    clearTimeout(timer);
  }
  if (!response.ok) throw new FetchError('http', path, `the server answered ${response.status}`);
  return response;
}

export async function fetchBytes(path) {
  const response = await fetchFile(path);
  try {
    return new Uint8Array(await response.arrayBuffer());
  } catch {
    throw new FetchError('network', path, 'broke off on the way');
  }
}
