// A shared device's own speech, for people who do not see its screen (users.md 3): each screen is read when it stands,
// what gets the focus is said, and so is what changes by a press; Escape says it again. Only on a shared device, and only
// when asked for there: anywhere else a screen reader may be running. What is said is the mirror's. Must not know WASM.

const READ_AFTER_MS = 500;  // screens that only load are gone by then
const LETTER_MS = 90;
const SAME_MS = 250;  // what changes so soon after it was announced is the same news

// In the order in which the app gives its words (web/screens/kiosk_state.cpp).
const WORDS = ['button', 'switch', 'choice', 'box', 'number', 'link', 'on', 'off', 'open', 'shut', 'chosen', 'unchosen',
  'ticked', 'unticked', 'resting', 'place'];
const ROLES = { button: 'button', toggle: 'switch', disclosure: 'button', radio: 'choice', checkbox: 'box', spin: 'number',
  link: 'link' };
const ITSELF = 'read-aloud';  // its words change because something is said

function heldBy({ role, checked, expanded, value, number }) {
  switch (role) {
    case 'toggle': return checked ? 'on' : 'off';
    case 'disclosure': return expanded ? 'open' : 'shut';
    case 'radio': return checked ? 'chosen' : 'unchosen';
    case 'checkbox': return checked ? 'ticked' : 'unticked';
    case 'spin': return value || String(number ?? 0);
    default: return '';
  }
}

const ended = (part) => (/[.!?…:]$/.test(part) ? part : `${part}.`);

function stateOf(node, words) {
  const held = heldBy(node);
  return [words[held] ?? held, node.disabled ? words.resting : ''].filter(Boolean);
}

// "Light. Choice, 2 of 3. Not chosen." Before it what holds it, where that is another than `last`, and no repetition.
export function wordsOf(node, nodes, words, last = '') {
  const siblings = nodes.filter(({ parent, role }) => parent === node.parent && role === node.role);
  const counts = ['radio', 'checkbox'].includes(node.role) && siblings.length > 1;
  const place = counts ? words.place.replace('{place}', siblings.indexOf(node) + 1).replace('{count}', siblings.length) : '';
  const group = nodes.find(({ id, role }) => id === node.parent && role.endsWith('group'));
  const known = [node.name, ...nodes.filter(({ role, level }) => role === 'heading' && (level || 1) === 1).map(({ name }) => name)];
  const before = group?.name && group.id !== last && !known.includes(group.name) ? [group.name] : [];
  const role = [words[ROLES[node.role]], place].filter(Boolean).join(', ');
  return [...before, node.name, role, ...stateOf(node, words), node.description ?? ''].filter(Boolean).map(ended).join(' ');
}

// What a press can change about controls, by id.
const controlsIn = (nodes) => new Map(nodes.filter(({ role, id }) => ROLES[role] && id !== ITSELF)
  .map((node) => [node.id, { name: node.name, held: heldBy(node) }]));

export class KioskSpeech {
  // frame() -> what the mirror shows; reader(): read_aloud.js's, or nothing yet.
  constructor({ frame, reader, host = globalThis }) {
    Object.assign(this, { frame, reader, host, on: false, id: '', news: '' });
    this.forget();
  }

  // lines: how, then the words; '': no more.
  use(lines) {
    const was = this.on;
    this.on = lines !== '';
    this.forget();
    this.later();
    if (was && !this.on) this.reader()?.read('stop');
    if (!this.on) return '';
    const [how, ...words] = lines.split('\n');
    this.how = how;
    this.words = Object.fromEntries(WORDS.map((name, n) => [name, words[n] ?? '']));
    if (was) this.later(() => this.sayFocused(), 0);  // so loud it is now
    else this.later(() => this.readAll());
    return '';
  }

  forget() {
    Object.assign(this, { place: this.reader()?.here(), controls: controlsIn(this.frame().nodes), said: '', group: '' });
  }

  // One thing at a time waits to be done; nothing: none does any more.
  later(act, after_ms = READ_AFTER_MS) {
    this.host.clearTimeout(this.timer);
    this.reads = act !== undefined && after_ms > 0;
    this.timer = act && this.host.setTimeout(() => { this.reads = false; act(); }, after_ms);
  }

  readAll() {
    this.twice = false;
    this.reader()?.read(`${this.how} all`.trim());
  }

  // A screen that waits to be read is read after these words.
  say(text) {
    this.twice = false;
    this.reader()?.say(text, this.how);
    if (this.reads) this.later(() => this.readAll(), READ_AFTER_MS + text.length * LETTER_MS);
  }

  sayFocused() {
    const { nodes } = this.frame();
    const node = nodes.find(({ id }) => id === this.id);
    if (!ROLES[node?.role]) return;
    this.said = wordsOf(node, nodes, this.words, this.group);
    Object.assign(this, { group: node.parent, place: this.reader()?.here() });
    this.later();
    this.say(this.said);
  }

  // The focus went to `id`. A heading gets it when its screen comes: it is read with that.
  moved(id, byKeyboard) {
    this.id = id;
    if (this.on && byKeyboard) this.sayFocused();
  }

  announced(text) {
    if (!this.on || !text) return;
    this.host.clearTimeout(this.newsEnds);
    this.newsEnds = this.host.setTimeout(() => { this.news = ''; }, SAME_MS);
    this.news = text;
    this.say(text);
  }

  // The mirror shows something else.
  changed() {
    if (!this.on) return;
    const { nodes } = this.frame();
    const before = this.controls;
    this.controls = controlsIn(nodes);
    if (this.reader()?.here() !== this.place) {
      this.forget();
      this.later(() => this.readAll(), READ_AFTER_MS + this.news.length * LETTER_MS);
    } else if (!this.news) {
      this.sayChange(nodes, before);
    }
  }

  // Of what was pressed: its words where they changed, else what it holds now.
  sayChange(nodes, before) {
    const differs = (part) => ({ id }) => before.has(id) && this.controls.has(id) && before.get(id)[part] !== this.controls.get(id)[part];
    const held = nodes.filter(differs('held'));
    const node = nodes.find(({ id }) => id === this.id && differs('name')({ id })) ?? held.find(({ checked }) => checked) ?? held[0];
    if (node) this.say([node.name, ...stateOf(node, this.words)].map(ended).join(' '));
  }

  // What has the focus once more; pressed again, or where nothing has it, the whole screen.
  again() {
    if (!this.said || this.twice) return this.readAll();
    this.say(this.said);
    this.twice = true;
    return undefined;
  }
}
