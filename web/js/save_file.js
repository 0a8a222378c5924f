// A text out of the page as a file, and a file that a person picks as text into it.

const MOST_BYTES = 100_000;

const TYPES = { csv: 'text/csv', ics: 'text/calendar', json: 'application/json' };
const typeOf = (name) => TYPES[name.slice(name.lastIndexOf('.') + 1)] ?? 'text/plain';

export function saveFile(name, text) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: typeOf(name) }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

// undefined when none was picked.
export function pickFile(accept) {
  const input = Object.assign(document.createElement('input'), { type: 'file', accept });
  return new Promise((done, failed) => {
    input.addEventListener('cancel', () => done(undefined));
    input.addEventListener('change', () => {
      const [file] = input.files;
      if (file === undefined) done(undefined);
      else if (file.size > MOST_BYTES) failed(new Error('this file is too large'));
      else file.text().then(done, failed);
    });
    input.click();
  });
}
