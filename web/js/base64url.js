// Bytes as base64url without padding, as in core/exchange/bytes.h, and back.

const LETTERS = /^[A-Za-z0-9_-]*$/;

export function toBase64url(bytes) {
  const letters = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return btoa(letters).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

// Throws on anything that toBase64url does not give.
export function fromBase64url(text) {
  if (!LETTERS.test(text) || text.length % 4 === 1) throw new Error('not base64url');
  const bytes = Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (letter) => letter.charCodeAt(0));
  if (toBase64url(bytes) !== text) throw new Error('stray bits at the end');
  return bytes;
}
