// The educator's key, and sealed results. Loaded when first asked for (asked.js). Every service takes a text and
// gives one back; bytes are base64url. The opened key lives in this part of the page alone, until it is locked or
// the page goes. Must not know what a result says.
//
//   seal        public key, bound, plain (a line each)       -> encapsulated key, sealed (a line each)
//   makeKey     a line with the day, then the dialog's lines -> public key; the key file is saved. '' : called off
//   useKey      nothing                                      -> public key of a file that is picked. '' : called off
//   unlock      the dialog's lines                           -> public key of the file picked and opened. '' : called off
//   openSealed  "encapsulated-key bound sealed" a line       -> what was sealed, or nothing, a line each, in order
//   lock        nothing                                      -> nothing; the key is forgotten

import './key_dialog.css';
import { fromBase64url, toBase64url } from './base64url.js';
import { askPassphrase } from './key_dialog.js';
import { FEWEST_LETTERS, makeKeyFile, openKeyFile, readKeyFile } from './key_file.js';
import { pickFile, saveFile } from './save_file.js';
import { open, seal } from './seal.js';

const ACCEPT = '.json,application/json';

let keys;  // opened

async function sealLines(words) {
  const { enc, sealed } = await seal(...words.split('\n').map(fromBase64url));
  return `${toBase64url(enc)}\n${toBase64url(sealed)}`;
}

// Lines "kind text" as an object.
const dialogWords = (lines) => Object.fromEntries(lines.map((line) => {
  const gap = line.indexOf(' ');
  return [line.slice(0, gap), line.slice(gap + 1)];
}));

async function makeKey(words) {
  const [made, ...lines] = words.trim().split('\n');
  const text = await askPassphrase(dialogWords(lines), {
    isNew: true, fewest: FEWEST_LETTERS, take: (passphrase) => makeKeyFile(passphrase, made),
  });
  if (text === undefined) return '';
  saveFile(`rehale-key-${made}.json`, text);
  return JSON.parse(text).publicKey;
}

async function useKey() {
  const text = await pickFile(ACCEPT);
  return text === undefined ? '' : toBase64url(readKeyFile(text).publicKey);
}

// undefined: another passphrase. Then the key that was open before stays open.
export async function unlockWith(text, passphrase) {
  const opened = await openKeyFile(text, passphrase);
  if (opened === undefined) return undefined;
  keys = opened;
  return toBase64url(readKeyFile(text).publicKey);
}

async function unlock(words) {
  const text = await pickFile(ACCEPT);
  if (text === undefined) return '';
  readKeyFile(text);  // before the passphrase is asked for
  const publicKey = await askPassphrase(dialogWords(words.trim().split('\n')), {
    isNew: false, take: (passphrase) => unlockWith(text, passphrase),
  });
  return publicKey ?? '';
}

async function openLine(line) {
  try {
    const [enc, bound, sealed] = line.split(' ').map(fromBase64url);
    return toBase64url(await open(keys, { enc, bound, sealed }));
  } catch {
    return '';  // for another key, or changed on the way
  }
}

async function openSealed(words) {
  if (keys === undefined) throw new Error('no key is open');
  const opened = [];
  for (const line of words.split('\n')) opened.push(await openLine(line));
  return opened.join('\n');
}

export const services = {
  seal: sealLines, makeKey, useKey, unlock, openSealed,
  lock: async () => { keys = undefined; return ''; },
};
