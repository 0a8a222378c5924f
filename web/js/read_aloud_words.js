// What of the mirror is read aloud, in which pieces. Only what also stands on the screen as words: no picture's
// description, no button of the top bar; all of it for people who asked for that because they do not see it. Plain data
// in, plain data out.

const SENTENCE_MOST = 150;  // letters: browsers cut longer ones off or stall (users.md 6.1)
const NOT_READ = new Set(['back', 'help', 'look-button', 'read-aloud']);
const WORDED = new Set(['heading', 'paragraph', 'status', 'list_item', 'button', 'toggle', 'disclosure', 'radio',
  'checkbox', 'spin', 'link', 'column_head', 'row_head', 'cell']);

const UNSEEN = new Set(['image', 'progress']);

const dialogOf = (nodes) => nodes.filter((node) => node.role === 'dialog').pop();

// Is it `id`, or in it?
function within(nodes, node, id) {
  for (let at = node; at; at = nodes.get(at.parent)) if (at.id === id) return true;
  return false;
}

// The buttons of an ordering card say "Pick up: Shake it, now 2 of 5"; the card itself has the bare words.
const isCard = (node) => node?.role === 'list_item' && node.position > 0 && Boolean(node.value);

function wordsOf(node) {
  if (isCard(node)) return `${node.position}, ${node.value}`;
  return node.role === 'spin' ? `${node.name} ${node.value ?? ''}`.trim() : node.name;
}

// Where the person is; another one stops the reading.
export function placeOf({ screen, language, nodes }) {
  const title = nodes.find((node) => node.role === 'heading' && (node.level || 1) === 1);
  return [screen, language, dialogOf(nodes)?.id, title?.name].join('|');
}

// The visible words, in reading order; in an open dialog only its own. all: what pictures show, too.
export function passagesOf({ nodes }, all = false) {
  const known = new Map(nodes.map((node) => [node.id, node]));
  const dialog = dialogOf(nodes);
  return nodes.filter((node) => (WORDED.has(node.role) || (all && UNSEEN.has(node.role))) && !NOT_READ.has(node.id) && wordsOf(node))
    .filter((node) => !dialog || within(known, node, dialog.id))
    .filter((node) => !isCard(known.get(node.parent)))
    .map(wordsOf);
}

// Sentences; long ones at a comma or, at the last, between words.
export function sentencesOf(text) {
  const whole = text.replace(/\s+/g, ' ').trim().match(/.+?(?:[.!?…]+["”»)]*(?=\s|$)|$)/g) ?? [];
  return whole.map((part) => part.trim()).filter(Boolean).flatMap(cut);
}

// In one piece where that is short enough.
export const piecesOf = (text) => (text.length <= SENTENCE_MOST ? [text] : sentencesOf(text));

function cut(sentence) {
  if (sentence.length <= SENTENCE_MOST) return [sentence];
  const head = sentence.slice(0, SENTENCE_MOST);
  const comma = Math.max(head.lastIndexOf(', '), head.lastIndexOf('; '));
  const at = comma > SENTENCE_MOST / 3 ? comma + 1 : Math.max(head.lastIndexOf(' '), 1);
  return [sentence.slice(0, at).trim(), ...cut(sentence.slice(at).trim())];
}
