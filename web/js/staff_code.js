// Asks for the staff's code in a dialog of real elements, with digits to tap: a shared device may have no keyboard. The
// first code given is the one that counts; what is kept of it is a salted, slow hash. Must not know what it opens.

import { bringStyle } from './style_sheet.js';

const KEPT = 'rehale.staff', LEAST = 4, MOST = 8;
const ROUNDS = 210_000;  // PBKDF2 with SHA-512: common practice (a general list of password storage advice); from memory
const WRONG_WAIT_MS = 3000;

const hex = (bytes) => [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, '0')).join('');

export async function hashOf(code, salt) {
  const bytes = new TextEncoder().encode(code);
  const key = await crypto.subtle.importKey('raw', bytes, 'PBKDF2', false, ['deriveBits']);
  const wish = { name: 'PBKDF2', hash: 'SHA-512', salt: new TextEncoder().encode(salt), iterations: ROUNDS };
  return hex(await crypto.subtle.deriveBits(wish, key, 256));
}

// true, false; undefined: this device has no code yet.
export async function isCode(code, storage = localStorage) {
  const [salt, hash] = (storage.getItem(KEPT) ?? '').split(':');
  return hash ? await hashOf(code, salt) === hash : undefined;
}

export async function setCode(code, storage = localStorage) {
  const salt = hex(crypto.getRandomValues(new Uint8Array(16)));
  storage.setItem(KEPT, `${salt}:${await hashOf(code, salt)}`);
}

function make(tag, fields = {}, ...children) {
  const element = Object.assign(document.createElement(tag), fields);
  element.append(...children);
  return element;
}

function build([title, lead, fresh, , go, back, erase], isNew) {
  const input = make('input', { type: 'password', inputMode: 'numeric', autocomplete: 'off', maxLength: MOST });
  input.setAttribute('aria-label', title);
  const alert = make('p', { className: 'told', role: 'alert' });
  const digit = (text) => make('button', { type: 'button', textContent: text, className: 'digit', onclick: () => {
    if (input.value.length < MOST) input.value += text;
  } });
  const keys = make('div', { className: 'digits' }, ...'1234567890'.split('').map(digit),
    make('button', { type: 'button', textContent: erase, className: 'digit', onclick: () => { input.value = ''; } }));
  const cancel = make('button', { type: 'button', textContent: back });
  const form = make('form', { method: 'dialog', noValidate: true }, make('h2', { id: 'staff-title', textContent: title }),
    make('p', { textContent: isNew ? fresh : lead }), input, alert, keys, make('button', { type: 'submit', textContent: go }), cancel);
  const dialog = make('dialog', { id: 'staff' }, form);
  dialog.setAttribute('aria-labelledby', 'staff-title');
  return { dialog, form, input, alert, cancel };
}

const fits = (code) => /^\d+$/.test(code) && code.length >= LEAST && code.length <= MOST;
const pause = (ms) => new Promise((done) => { setTimeout(done, ms); });

// words: title, lead, "no code yet", wrong, go, back, erase. 'yes', or '' when they went back.
export async function askCode(words) {
  const isNew = !localStorage.getItem(KEPT);
  const { link, isHere } = bringStyle('./kiosk.css');
  const { dialog, form, input, alert, cancel } = build(words, isNew);
  await isHere.catch(() => {});  // plain, but it works
  document.body.append(dialog);
  try {
    return await new Promise((done, failed) => {
      dialog.addEventListener('close', () => done(''));
      cancel.addEventListener('click', () => dialog.close());
      form.addEventListener('submit', (event) => {
        event.preventDefault();
        const code = input.value;
        input.value = alert.textContent = '';
        if (isNew && fits(code)) return setCode(code).then(() => done('yes'), failed);
        return (isNew ? Promise.resolve(false) : isCode(code)).then(async (right) => {
          if (right) return done('yes');
          if (!isNew) await pause(WRONG_WAIT_MS);
          alert.textContent = isNew ? words[2] : words[3];
          return input.focus();
        }, failed);
      });
      dialog.showModal();
      input.focus();
    });
  } finally {
    input.value = '';
    dialog.close();
    dialog.remove();
    link.remove();
  }
}
