// Asks for a passphrase in a dialog of real elements, so that it never reaches the canvas and password managers
// can help. Every sentence comes in, by kind. Must not know keys.

import { bringStyle } from './style_sheet.js';

function make(tag, fields = {}, ...children) {
  const element = Object.assign(document.createElement(tag), fields);
  element.append(...children);
  return element;
}

function field(label, autocomplete) {
  const input = make('input', { type: 'password', autocomplete, required: true, spellcheck: false });
  return { input, row: make('label', {}, make('span', { textContent: label }), input) };
}

function build(words, isNew) {
  const first = field(words.first, isNew ? 'new-password' : 'current-password');
  const again = isNew ? field(words.again, 'new-password') : undefined;
  const alert = make('p', { className: 'told', role: 'alert' });
  const cancel = make('button', { type: 'button', textContent: words.cancel });
  const go = make('button', { type: 'submit', textContent: words.go });
  const form = make('form', { method: 'dialog', noValidate: true },
    make('h2', { id: 'key-title', textContent: words.title }), make('p', { textContent: words.lead }),
    first.row, ...(again ? [again.row] : []), alert, go, cancel);
  const dialog = make('dialog', { id: 'key' }, form);
  dialog.setAttribute('aria-labelledby', 'key-title');
  return { dialog, form, first: first.input, again: again?.input, alert, cancel, go };
}

// take(passphrase): tries it; what it returns is handed back, undefined: told as words.wrong, asked again.
// isNew: asked twice, at least `fewest` letters. undefined: the person went back.
export async function askPassphrase(words, { isNew, fewest, take }) {
  const { link, isHere } = bringStyle('./sealing.css');
  const parts = build(words, isNew);
  const { dialog, form, first, again, alert, cancel, go } = parts;
  const tell = (text, input) => {
    alert.textContent = text;
    input.setAttribute('aria-invalid', 'true');
    input.focus();
  };
  dialog.addEventListener('keydown', (event) => event.stopPropagation());  // they are not the page's (keys.js)
  await isHere.catch(() => {});  // plain, but it works
  document.body.append(dialog);
  const answer = await new Promise((done, failed) => {
    dialog.addEventListener('close', () => done(undefined));
    cancel.addEventListener('click', () => dialog.close());
    form.addEventListener('submit', (event) => {
      event.preventDefault();
      for (const input of [first, again]) input?.removeAttribute('aria-invalid');
      alert.textContent = '';
      const passphrase = first.value;
      if (isNew && [...passphrase].length < fewest) return tell(words.short, first);
      if (again && again.value !== passphrase) return tell(words.differ, again);
      go.disabled = true;
      take(passphrase).then((taken) => {
        go.disabled = false;
        if (taken === undefined) tell(words.wrong, first);
        else done(taken);
      }, failed);
    });
    dialog.showModal();
    first.focus();
  }).finally(() => {
    for (const input of [first, again]) if (input) input.value = '';
    dialog.close();
    dialog.remove();
    link.remove();
  });
  return answer;
}
