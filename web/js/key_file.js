// The educator's key as a file that only a passphrase opens; assets/key.schema.json describes it. The secret part
// (32 bytes) is encrypted with AES-256-GCM, the public key as additional data, under a key that PBKDF2 with
// SHA-256 makes of the passphrase. Must not know the page: text in, text out.

import { fromBase64url, toBase64url } from './base64url.js';

const ITERATIONS = 600_000;  // OWASP's number for PBKDF2 with SHA-256
const MOST_ITERATIONS = 10_000_000;  // a file cannot make the page hang
const MOST_LETTERS = 4000;
const CURVE = { name: 'ECDH', namedCurve: 'P-256' };

export const FEWEST_LETTERS = 12;  // of a passphrase

export class KeyFileError extends Error {}

// A passphrase typed on another keyboard is the same passphrase.
const bytesOf = (passphrase) => new TextEncoder().encode(passphrase.normalize('NFKC'));

async function lockOf(passphrase, salt, iterations) {
  const typed = await crypto.subtle.importKey('raw', bytesOf(passphrase), 'PBKDF2', false, ['deriveKey']);
  return crypto.subtle.deriveKey({ name: 'PBKDF2', hash: 'SHA-256', salt, iterations }, typed,
    { name: 'AES-GCM', length: 256 }, false, ['encrypt', 'decrypt']);
}

// The text of a new key's file. iterations: for tests.
export async function makeKeyFile(passphrase, made, iterations = ITERATIONS) {
  const { privateKey, publicKey } = await crypto.subtle.generateKey(CURVE, true, ['deriveBits']);
  const open = new Uint8Array(await crypto.subtle.exportKey('raw', publicKey));
  const secret = fromBase64url((await crypto.subtle.exportKey('jwk', privateKey)).d);
  const salt = crypto.getRandomValues(new Uint8Array(16));
  const iv = crypto.getRandomValues(new Uint8Array(12));
  const lock = await lockOf(passphrase, salt, iterations);
  const locked = await crypto.subtle.encrypt({ name: 'AES-GCM', iv, additionalData: open }, lock, secret);
  secret.fill(0);
  return `${JSON.stringify({
    schema: 1,
    kind: 'rehale-key',
    made,
    publicKey: toBase64url(open),
    kdf: { name: 'PBKDF2', hash: 'SHA-256', iterations, salt: toBase64url(salt) },
    cipher: { name: 'AES-256-GCM', iv: toBase64url(iv) },
    lockedKey: toBase64url(new Uint8Array(locked)),
  }, null, 1)}\n`;
}

function bytes(text, count) {
  const found = fromBase64url(text);
  if (found.length !== count) throw new Error(`${found.length} bytes, not ${count}`);
  return found;
}

function readFields(file) {
  const { kdf, cipher } = file;
  const known = file.schema === 1 && file.kind === 'rehale-key' && kdf.name === 'PBKDF2' &&
    kdf.hash === 'SHA-256' && cipher.name === 'AES-256-GCM' && Number.isInteger(kdf.iterations) &&
    kdf.iterations > 0 && kdf.iterations <= MOST_ITERATIONS;
  if (!known) throw new Error('a file of another kind or a later version');
  const publicKey = bytes(file.publicKey, 65);
  if (publicKey[0] !== 4) throw new Error('not an uncompressed point');
  return {
    publicKey, iterations: kdf.iterations, salt: bytes(kdf.salt, 16), iv: bytes(cipher.iv, 12),
    locked: bytes(file.lockedKey, 48),
  };
}

// What can be told without the passphrase: its fields, the public key as bytes. Throws KeyFileError.
export function readKeyFile(text) {
  if (text.length > MOST_LETTERS) throw new KeyFileError('too long for a key file');
  try {
    return readFields(JSON.parse(text));
  } catch (error) {
    throw new KeyFileError(`not a key file: ${error.message}`);
  }
}

// The pair of keys, which cannot be taken out of the browser again. undefined: another passphrase, or the file was
// changed. Throws KeyFileError.
export async function openKeyFile(text, passphrase) {
  const { publicKey, iterations, salt, iv, locked } = readKeyFile(text);
  const lock = await lockOf(passphrase, salt, iterations);
  let secret;
  try {
    secret = await crypto.subtle.decrypt({ name: 'AES-GCM', iv, additionalData: publicKey }, lock, locked);
  } catch {
    return undefined;
  }
  const jwk = {
    kty: 'EC', crv: 'P-256', x: toBase64url(publicKey.subarray(1, 33)), y: toBase64url(publicKey.subarray(33)),
    d: toBase64url(new Uint8Array(secret)),
  };
  return {
    privateKey: await crypto.subtle.importKey('jwk', jwk, CURVE, false, ['deriveBits']),
    publicKey: await crypto.subtle.importKey('raw', publicKey, CURVE, true, []),
  };
}
