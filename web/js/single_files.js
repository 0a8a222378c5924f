// In the page as one file, instead of fetch_text.js: files come from the block of data in the page itself.

const TYPES = { wasm: 'application/wasm', json: 'application/json', ttf: 'font/ttf' };
const files = new Map();

export class FetchError extends Error {
  constructor(code, path, detail) {
    super(`${path}: ${detail}`);
    Object.assign(this, { code, path, detail });
  }
}

// packed: base64 of gzip of: length of the list (4 bytes, little end first), the list [[name, bytes]…] as JSON, the files.
export async function unpack(packed) {
  const bytes = Uint8Array.from(atob(packed), (letter) => letter.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  const all = await new Response(stream).arrayBuffer();
  const end = 4 + new DataView(all).getUint32(0, true);
  let at = end;
  for (const [name, length] of JSON.parse(new TextDecoder().decode(all.slice(4, end)))) {
    files.set(name, new Uint8Array(all, at, length));
    at += length;
  }
}

export async function fetchBytes(path) {
  const bytes = files.get(path);
  if (bytes === undefined) throw new FetchError('http', path, 'it is not in this file');
  return bytes.slice();
}

export async function fetchFile(path) {
  return new Response(await fetchBytes(path), { headers: { 'content-type': TYPES[path.slice(path.lastIndexOf('.') + 1)] ?? 'text/plain' } });
}
