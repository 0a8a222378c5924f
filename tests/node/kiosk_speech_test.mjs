// web/js/kiosk_speech.js and the keys of kiosk.js without a browser: what is said of a control, when a screen is read,
// what cuts off what, and what Escape and Enter do. Sources: users.md 3 (own speech mode, private, can be begun again;
// every control with name, role and state: WCAG 2.2, 4.1.2).
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { KioskSpeech, wordsOf } from '../../web/js/kiosk_speech.js';
import { bundled } from '../bundled.mjs';

const k_lines = ['quiet', 'Button', 'Switch', 'Choice', 'Tick box', 'Number', 'Link', 'On', 'Off', 'Open', 'Shut', 'Chosen',
  'Not chosen', 'Ticked', 'Not ticked', 'Not ready yet', '{place} of {count}'].join('\n');
const node = (id, role, name, more = {}) => ({ id, role, name, parent: '', ...more });
const k_nodes = [
  node('ask', 'heading', 'What do you do?', { level: 1 }),
  node('c', 'radio_group', 'What do you do?'),
  node('c/1', 'radio', 'I breathe in slowly', { parent: 'c' }), node('c/2', 'radio', 'I breathe in fast.', { parent: 'c' }),
  node('n', 'spin', 'How long?', { value: '3 seconds', number: 3 }),
  node('next', 'button', 'Next', { disabled: true }), node('read-aloud', 'button', 'Read aloud'),
];

// On: after the screen that stood when it was turned on was read. says: what the reader was told, in order.
function speaking({ nodes = k_nodes, turnOn = true } = {}) {
  const host = { now: 0, timers: new Map(), next: 1, says: [], frame: { screen: 'question', language: 'en', nodes } };
  host.setTimeout = (act, ms = 0) => { host.timers.set(host.next, { at: host.now + ms, act }); return host.next++; };
  host.clearTimeout = (id) => host.timers.delete(id);
  host.pass = (ms) => {
    host.now += ms;
    for (const [id, { at, act }] of [...host.timers]) if (at <= host.now && host.timers.delete(id)) act();
  };
  const here = () => [host.frame.screen, host.frame.language, host.frame.nodes.find(({ role }) => role === 'dialog')?.id].join();
  const reader = { here, read: (wish) => host.says.push(`(${wish})`), say: (text, wish) => host.says.push(`${wish}: ${text}`) };
  host.speech = new KioskSpeech({ frame: () => host.frame, reader: () => reader, host });
  host.show = (change) => { host.frame = { ...host.frame, ...change }; host.speech.changed(); };
  host.change = (id, more) => host.show({ nodes: host.frame.nodes.map((each) => (each.id === id ? { ...each, ...more } : each)) });
  host.taken = () => host.says.splice(0);
  if (turnOn) { host.speech.use(k_lines); host.pass(500); host.taken(); }
  return host;
}

const words = Object.fromEntries(['button', 'switch', 'choice', 'box', 'number', 'link', 'on', 'off', 'open', 'shut', 'chosen',
  'unchosen', 'ticked', 'unticked', 'resting', 'place'].map((name, n) => [name, k_lines.split('\n')[n + 1]]));

test('a control is said by name, role, place, state and what else is told of it', () => {
  const box = node('b/on', 'checkbox', 'Keep pictures still', { parent: 'b', checked: true });
  const light = node('g/1', 'radio', 'Light', { parent: 'g', checked: true }), dark = node('g/2', 'radio', 'Dark', { parent: 'g' });
  const nodes = [...k_nodes, node('b', 'group', 'Keep pictures still'), box, node('g', 'radio_group', 'Colours'), light, dark];
  for (const [of, said] of [
    [k_nodes[2], 'I breathe in slowly. Choice, 1 of 2. Not chosen.'],
    [k_nodes[3], 'I breathe in fast. Choice, 2 of 2. Not chosen.'],
    [k_nodes[4], 'How long? Number. 3 seconds.'],
    [k_nodes[5], 'Next. Button. Not ready yet.'],
    [box, 'Keep pictures still. Tick box. Ticked.'],
    [light, 'Colours. Light. Choice, 1 of 2. Chosen.'],
    [node('t', 'toggle', 'Hold still', { checked: false }), 'Hold still. Switch. Off.'],
    [node('d', 'disclosure', 'More', { expanded: true }), 'More. Button. Open.'],
    [node('card', 'button', 'Spray inhaler', { description: 'A can in a sleeve' }), 'Spray inhaler. Button. A can in a sleeve.'],
  ]) assert.equal(wordsOf(of, nodes, words), said);
  assert.equal(wordsOf(dark, nodes, words, 'g'), 'Dark. Choice, 2 of 2. Not chosen.', 'the group is said where it begins');
});

test('off until asked for, and silent when turned off', () => {
  const host = speaking({ turnOn: false });
  host.speech.moved('next', true);
  host.speech.announced('You have this.');
  host.show({ screen: 'result' });
  host.pass(5000);
  assert.deepEqual(host.taken(), []);
  host.speech.use(k_lines);
  host.pass(500);
  assert.deepEqual(host.taken(), ['(quiet all)']);
  host.speech.use('');
  host.show({ screen: 'question' });
  host.speech.moved('next', true);
  host.pass(5000);
  assert.deepEqual(host.taken(), ['(stop)']);
});

test('a screen is read when it has stood for half a second; a dialog, too', () => {
  const host = speaking();
  host.show({ screen: 'loading' });
  host.pass(300);
  host.show({ screen: 'ready' });
  host.pass(499);
  assert.deepEqual(host.taken(), []);
  host.pass(1);
  assert.deepEqual(host.taken(), ['(quiet all)']);
  host.show({ nodes: [...k_nodes, node('idle', 'dialog', 'Are you still there?')] });
  host.pass(500);
  assert.deepEqual(host.taken(), ['(quiet all)']);
});

test("the keyboard's focus is said at once, instead of reading on; a finger's and a heading's are not", () => {
  const host = speaking();
  host.show({ screen: 'again' });
  host.pass(100);
  host.speech.moved('c/1', true);
  host.pass(5000);
  assert.deepEqual(host.taken(), ['quiet: I breathe in slowly. Choice, 1 of 2. Not chosen.']);
  host.speech.moved('c/2', false);
  host.speech.moved('ask', true);
  host.pass(5000);
  assert.deepEqual(host.taken(), []);
});

test('back from a dialog only the button is said that has the focus again', () => {
  const host = speaking();
  host.show({ nodes: [...k_nodes, node('look', 'dialog', 'Settings')] });
  host.pass(500);
  host.taken();
  host.frame = { ...host.frame, nodes: k_nodes };  // the mirror moves the focus before it tells of the change
  host.speech.moved('next', true);
  host.speech.changed();
  host.pass(5000);
  assert.deepEqual(host.taken(), ['quiet: Next. Button. Not ready yet.']);
});

test('what a press changes is said: of a choice, a number, the words of the button itself', () => {
  const host = speaking();
  host.show({ nodes: k_nodes.map((each) => ({ ...each, checked: each.id === 'c/2', disabled: false })) });
  assert.deepEqual(host.taken(), ['quiet: I breathe in fast. Chosen.']);
  host.change('n', { value: '4 seconds', number: 4 });
  assert.deepEqual(host.taken(), ['quiet: How long? 4 seconds.']);
  host.speech.moved('next', true);
  host.taken();
  host.change('next', { name: 'Tap to stop' });
  assert.deepEqual(host.taken(), ['quiet: Tap to stop.']);
  host.change('read-aloud', { name: 'Stop reading' });
  host.change('ask', { name: 'What do you do now?' });
  assert.deepEqual(host.taken(), []);
});

test('what is announced is said; the change that it announces is not said twice, the next one is', () => {
  const host = speaking();
  host.speech.announced('Shake it is now 2 of 5.');
  host.change('n', { value: '4 seconds' });
  assert.deepEqual(host.taken(), ['quiet: Shake it is now 2 of 5.']);
  host.pass(300);
  host.change('n', { value: '5 seconds' });
  assert.deepEqual(host.taken(), ['quiet: How long? 5 seconds.']);
  for (const steps of [['show', 'announced'], ['announced', 'show']]) {
    for (const step of steps) {
      if (step === 'show') host.show({ screen: steps.join() });
      else host.speech.announced('You have this.');
    }
    host.pass(500);
    assert.deepEqual(host.taken(), ['quiet: You have this.'], 'the screen is read after it');
    host.pass(5000);
    assert.deepEqual(host.taken(), ['(quiet all)']);
  }
});

test('again: what has the focus; twice, or without one, the whole screen', () => {
  const host = speaking();
  host.speech.again();
  assert.deepEqual(host.taken(), ['(quiet all)']);
  host.speech.moved('next', true);
  host.taken();
  for (let n = 0; n < 3; n += 1) host.speech.again();
  const [next] = host.says;
  assert.deepEqual(host.taken(), ['quiet: Next. Button. Not ready yet.', '(quiet all)', next]);
});

test('another loudness holds at once, and says the choice once more', () => {
  const host = speaking();
  host.speech.moved('c/2', true);
  host.taken();
  host.speech.use(k_lines.replace('quiet', 'medium'));
  host.pass(500);
  assert.deepEqual(host.taken(), ['medium: I breathe in fast. Choice, 2 of 2. Not chosen.']);
});

test('Enter chooses and ticks; Escape turns the speech on at the start, says again elsewhere, and is left to dialogs', async () => {
  const { chooseByEnter, sayAgain } = await bundled('kiosk.js');
  const presses = [];
  const target = { matches: (what) => what.includes('radio'), click: () => presses.push('click') };
  assert.ok(chooseByEnter({ key: 'Enter', target }) && chooseByEnter({ key: 'Enter', target, repeat: true }));
  assert.ok(!chooseByEnter({ key: 'Enter', target: { matches: () => false } }) && !chooseByEnter({ key: 'a', target }));
  assert.deepEqual(presses.splice(0), ['click']);
  const speech = { on: false, again: () => presses.push('again') };
  const mirror = { frame: { screen: 'kiosk', nodes: [] }, element: (id) => ({ click: () => presses.push(id) }) };
  const escape = (more = {}) => sayAgain({ key: 'Escape', target: {}, ...more }, speech, mirror);
  assert.ok(escape() && escape({ repeat: true }));
  speech.on = true;
  assert.ok(escape());
  assert.deepEqual(presses, ['aloud', 'again']);
  mirror.frame.nodes = [node('idle', 'dialog', '')];
  assert.ok(!escape());
  Object.assign(speech, { on: false });
  mirror.frame = { screen: 'question', nodes: [] };
  assert.ok(!escape());
});
