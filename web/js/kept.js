// What the person agreed to keep on this device: short texts by name. A browser that keeps nothing, or a
// text that is far too long, reads as nothing kept. Must not know what the texts say.

const PREFIX = 'rehale.', MOST_LETTERS = 2000;

export function readKept(name, storage = () => localStorage, most = MOST_LETTERS) {
  try {
    const text = storage().getItem(PREFIX + name) ?? '';
    return text.length <= most ? text : '';
  } catch {
    return '';  // switched off
  }
}

// words: name, line break, text; no text: it is taken away. Throws where the browser keeps nothing.
export function keep(words, storage = () => localStorage) {
  const end = words.indexOf('\n');
  const [name, text] = [PREFIX + words.slice(0, end), words.slice(end + 1)];
  if (text === '') storage().removeItem(name);
  else storage().setItem(name, text);
  return '';
}
