// web/js/read_aloud*.js and kept.js without a browser: what is read and in which pieces, which voice, what happens when
// a voice stalls. The speech is played, on a clock of its own.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Aloud } from '../../web/js/aloud.js';
import { keep, readKept } from '../../web/js/kept.js';
import { Reader, voiceFor } from '../../web/js/read_aloud.js';
import { passagesOf, placeOf, sentencesOf } from '../../web/js/read_aloud_words.js';

const near = (lang, more = {}) => ({ name: lang, lang, localService: true, ...more });
const node = (id, role, name, more = {}) => ({ id, role, name, ...more });
const k_screen = {
  screen: 'question', language: 'en',
  nodes: [
    node('back', 'button', 'Back'), node('progress', 'progress', 'Question 1, up to 12'),
    node('read-aloud', 'button', 'Read aloud'), node('help', 'button', 'Help and about'), node('look-button', 'button', 'Settings'),
    node('ask', 'heading', 'You breathe in your puff. What do you do?', { level: 1 }),
    node('picture', 'image', 'A person with a spray inhaler.'),
    node('c', 'radio_group', 'What do you do?'), node('c/1', 'radio', 'I breathe in slowly', { parent: 'c' }),
    node('n', 'spin', 'How long?', { value: '3 seconds' }), node('next', 'button', 'Next'),
  ],
};

test('what stands on the screen as words is read, in order; the corners and the picture are not', () => {
  assert.deepEqual(passagesOf(k_screen),
    ['You breathe in your puff. What do you do?', 'I breathe in slowly', 'How long? 3 seconds', 'Next']);
});

test('for people who do not see it: the picture and how far they are, too', () => {
  assert.deepEqual(passagesOf(k_screen, true).slice(0, 3),
    ['Question 1, up to 12', 'You breathe in your puff. What do you do?', 'A person with a spray inhaler.']);
});

test('an ordering card is read by its own words, without its buttons', () => {
  const card = (n, words) => [node(`o/${n}`, 'list_item', '', { parent: 'o', position: n, set_size: 2, value: words }),
    node(`o/${n}/pick`, 'button', `Pick up: ${words}, now ${n} of 2`, { parent: `o/${n}` }),
    node(`o/${n}/up`, 'button', `Move up: ${words}, now ${n} of 2`, { parent: `o/${n}` })];
  const nodes = [node('o', 'list', ''), ...card(1, 'Shake it'), ...card(2, 'Breathe out')];
  assert.deepEqual(passagesOf({ nodes }), ['1, Shake it', '2, Breathe out']);
});

test('an open dialog is all that is read', () => {
  const nodes = [...k_screen.nodes, node('leave', 'dialog', 'Leave?'), node('leave/title', 'heading', 'Leave the check?', { parent: 'leave', level: 2 }),
    node('stay', 'button', 'Stay here', { parent: 'leave' })];
  assert.deepEqual(passagesOf({ nodes }), ['Leave the check?', 'Stay here']);
  assert.notEqual(placeOf({ ...k_screen, nodes }), placeOf(k_screen));
});

test('sentences of 150 letters at the most, none lost (users.md 6.1)', () => {
  assert.deepEqual(sentencesOf('Breathe out. Is it 3.5 seconds? "Yes!" Go on'), ['Breathe out.', 'Is it 3.5 seconds?', '"Yes!"', 'Go on']);
  const long = `${'Take it out, hold your breath, and count to ten slowly, '.repeat(6)}then ${'breathe '.repeat(30)}out.`;
  const parts = sentencesOf(long);
  assert.ok(parts.every((part) => part.length <= 150 && part.length > 0), parts.join('\n'));
  assert.equal(parts.join(' '), long);
  assert.deepEqual(sentencesOf(''), []);
  assert.equal(sentencesOf('x'.repeat(400)).join(''), 'x'.repeat(400));
});

test("the voice is the language's: the person's region first, then the device's default", () => {
  const voices = [near('es-ES'), near('es-MX', { default: true }), near('en_GB'), near('en-US')];
  assert.equal(voiceFor(voices, 'es', ['es-ES']).lang, 'es-ES');
  assert.equal(voiceFor(voices, 'es', ['en']).lang, 'es-MX');
  assert.equal(voiceFor(voices, 'en', ['en-GB']).lang, 'en_GB');
  assert.equal(voiceFor(voices, 'pt', ['pt-BR']), undefined);
});

// A host with a clock that stands still but for pass(); silent(text): the engine never begins with it.
function played({ voices = [near('en-US')], silent = () => false, tellsWords = false } = {}) {
  const host = { now: 0, timers: new Map(), next: 1, said: [], told: [], frame: k_screen, cancels: 0, queue: [] };
  host.setTimeout = (act, ms = 0) => { host.timers.set(host.next, { at: host.now + ms, act }); return host.next++; };
  host.clearTimeout = (id) => host.timers.delete(id);
  host.pass = (ms) => {
    for (const end = host.now + ms; ;) {
      const [id, due] = [...host.timers].filter(([, { at }]) => at <= end).sort((a, b) => a[1].at - b[1].at)[0] ?? [];
      if (!id) { host.now = end; return; }
      host.timers.delete(id);
      host.now = Math.max(host.now, due.at);
      due.act();
    }
  };
  const begin = () => {
    const utterance = host.queue[0];
    if (!utterance || silent(utterance.text)) return;
    host.said.push(utterance.text);
    utterance.onstart();
    if (tellsWords) host.setTimeout(() => { if (host.queue[0] === utterance) utterance.onboundary(); }, 300);
    host.setTimeout(() => {
      if (host.queue[0] !== utterance) return;
      host.queue.shift();
      const others = host.queue.length > 0;
      utterance.onend();
      if (others) begin();
    }, 600);
  };
  host.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
  host.speechSynthesis = {
    getVoices: () => voices,
    addEventListener: (_, act) => { host.voicesChanged = act; },
    speak: (utterance) => { host.queue.push(utterance); if (host.queue.length === 1) host.setTimeout(begin); },
    cancel: () => {
      host.cancels += 1;
      for (const utterance of host.queue.splice(0)) host.setTimeout(() => utterance.onerror({ error: 'canceled' }));
    },
  };
  host.reader = new Reader({ frame: () => host.frame, told: (...told) => host.told.push(told), host });
  return host;
}

const k_all = passagesOf(k_screen).flatMap(sentencesOf);

test('every sentence once, in order, slower than the voice would; said when it begins and ends', () => {
  const host = played();
  assert.deepEqual(host.told, [['en', false]]);
  host.reader.read('');
  assert.equal(host.queue[0].rate, 0.9);
  host.pass(60_000);
  assert.deepEqual(host.said, k_all);
  assert.deepEqual(host.told, [['en', false], ['en', true], ['en', false]]);
  host.reader.read('slowly');
  assert.equal(host.queue[0].rate, 0.7);
});

test('as loud as asked for: 6 and 12 dB below the loudest (users.md 3), and together with slowly', () => {
  const host = played();
  for (const [wish, volume, rate] of [['', 1, 0.9], ['medium', 0.5, 0.9], ['quiet', 0.25, 0.9], ['slowly quiet', 0.25, 0.7], ['all', 1, 0.9]]) {
    host.reader.read(wish);
    host.pass(100);
    assert.deepEqual([host.queue[0].volume, host.queue[0].rate], [volume, rate], wish);
  }
  assert.deepEqual([0.5, 0.25].map((volume) => Math.round(20 * Math.log10(volume))), [-6, -12]);
});

test('words of their own cut off what is read, and are not told as reading', () => {
  const host = played();
  host.reader.read('');
  host.pass(700);
  const before = host.said.length;
  host.reader.say('Start. Button.', 'quiet');
  assert.deepEqual(host.told.at(-1), ['en', false]);
  host.pass(60_000);
  assert.deepEqual(host.said.slice(before), ['Start. Button.']);
  assert.deepEqual(host.told.at(-1), ['en', false]);
  host.reader.say('word '.repeat(60), '');
  host.pass(60_000);
  assert.ok(host.said.slice(before + 1).every((text) => text.length <= 150));
});

test('never by itself; only by voices of the device itself', () => {
  const host = played({ voices: [near('es-MX'), near('en-US', { localService: false })] });
  host.reader.changed();
  host.reader.read('');
  host.pass(60_000);
  assert.deepEqual([host.said, host.told], [[], [['es', false]]]);
});

test('voices that come late, and that go, are told', () => {
  const voices = [];
  const host = played({ voices });
  assert.deepEqual(host.told, []);
  voices.push(near('pt-BR'), near('en-GB'), near('en-US'));
  host.voicesChanged();
  voices.length = 0;
  host.voicesChanged();
  assert.deepEqual(host.told, [['en pt', false], ['', false]]);
});

test('another screen, and "stop", end it at once', () => {
  for (const end of [(host) => { host.frame = { ...k_screen, screen: 'result' }; host.reader.changed(); }, (host) => host.reader.read('stop')]) {
    const host = played();
    host.reader.read('');
    host.pass(700);
    end(host);
    assert.deepEqual(host.told.at(-1), ['en', false]);
    const said = host.said.length;
    host.pass(60_000);
    assert.equal(host.said.length, said);
    assert.equal(host.timers.size, 0);
  }
});

test('a change on the same screen does not end it', () => {
  const host = played();
  host.reader.read('');
  host.pass(700);
  host.frame = { ...k_screen, nodes: k_screen.nodes.map((each) => ({ ...each, checked: true })) };
  host.reader.changed();
  host.pass(60_000);
  assert.deepEqual(host.said, k_all);
});

test('a stalled sentence is passed over, no later than 8 s and the time it would take; three in a row end it', () => {
  const once = played({ silent: (text) => text === k_all[1], tellsWords: true });
  once.reader.read('');
  once.pass(30_000);
  assert.deepEqual(once.said, k_all.filter((text) => text !== k_all[1]));
  assert.ok(once.cancels >= 1);
  const dead = played({ silent: () => true });
  dead.reader.read('');
  dead.pass(3 * (8000 + 150 * 100 / 0.7));
  assert.deepEqual(dead.said, []);
  assert.deepEqual(dead.told.at(-1), ['en', false]);
  assert.equal(dead.timers.size, 0);
});

test('60 sentences in a row (users.md 8, 16)', () => {
  const host = played();
  host.frame = { ...k_screen, nodes: Array.from({ length: 60 }, (_, n) => node(`p${n}`, 'paragraph', `Sentence ${n}.`)) };
  host.reader.read('');
  host.pass(60_000);
  assert.equal(host.said.length, 60);
});

test('a browser without speech is never asked; a script that does not come is asked for again', async () => {
  let asked = 0;
  const none = new Aloud({ frame: () => k_screen, told: () => {}, host: {}, fetchReader: async () => { asked += 1; return {}; } });
  await none.get();
  none.read('');
  assert.equal(asked, 0);
  const poor = new Aloud({ host: { speechSynthesis: {} }, fetchReader: async () => { asked += 1; throw new Error('offline'); } });
  await poor.get();
  await poor.get();
  assert.equal(asked, 2);
});

test('kept texts: read, replaced, taken away; a storage that throws reads as empty and is told on writing', () => {
  const texts = new Map();
  const storage = () => ({ getItem: (key) => texts.get(key) ?? null, setItem: (key, text) => texts.set(key, text), removeItem: (key) => texts.delete(key) });
  assert.equal(readKept('settings', storage), '');
  keep('settings\n1 text=150', storage);
  assert.equal(readKept('settings', storage), '1 text=150');
  assert.deepEqual([...texts.keys()], ['rehale.settings']);
  keep('settings\n', storage);
  assert.equal(texts.size, 0);
  texts.set('rehale.settings', 'x'.repeat(5000));
  assert.equal(readKept('settings', storage), '');
  const broken = () => { throw new Error('denied'); };
  assert.equal(readKept('settings', broken), '');
  assert.throws(() => keep('settings\n1', broken));
});
