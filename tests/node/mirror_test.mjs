// What each role becomes on the page. Allowed attributes and the states that a role must carry are those of
// WAI-ARIA 1.2 and HTML-AAM (from memory; axe-core checks the living page in tests/browser).
import assert from 'node:assert/strict';
import test from 'node:test';
import { familiesOf } from '../../web/js/mirror.js';
import { attributesOf, clipOf, isControl, tagOf, textOf } from '../../web/js/mirror_roles.js';

const node = (role, more = {}) => ({ id: 'x', role, name: 'Name', rect: [0, 0, 100, 50], ...more });
const set = (attributes) => Object.fromEntries(Object.entries(attributes).filter(([, value]) => value !== null));

test('every role of mirror_node.h is a real element', () => {
  const tags = {
    group: 'div', radio_group: 'div', list: 'ul', list_item: 'li', heading: 'h2', paragraph: 'p', image: 'div',
    button: 'button', toggle: 'button', disclosure: 'button', radio: 'input', checkbox: 'input', spin: 'input',
    link: 'a', progress: 'progress', dialog: 'div', status: 'p',
  };
  for (const [role, tag] of Object.entries(tags)) assert.equal(tagOf(node(role, { level: 2 })), tag, role);
});

test('a heading keeps between h1 and h6', () => {
  assert.equal(tagOf(node('heading', { level: 0 })), 'h1');
  assert.equal(tagOf(node('heading', { level: 9 })), 'h6');
});

test('words are text where the element is its text, else a label', () => {
  assert.equal(textOf(node('button')), 'Name');
  assert.equal(attributesOf(node('button'))['aria-label'], null);
  assert.equal(textOf(node('radio')), null);
  assert.equal(attributesOf(node('radio'))['aria-label'], 'Name');
});

test('a list item that holds others never has its text set over them', () => {
  assert.equal(textOf(node('list_item'), true), null);
  assert.equal(textOf(node('list_item'), false), 'Name');
});

test('states go where the role allows them, and off is said, too', () => {
  assert.equal(attributesOf(node('toggle'))['aria-pressed'], 'false');
  assert.equal(attributesOf(node('toggle', { checked: true }))['aria-pressed'], 'true');
  assert.equal(attributesOf(node('disclosure', { expanded: true }))['aria-expanded'], 'true');
  assert.equal(attributesOf(node('button', { checked: true }))['aria-pressed'], null);
  assert.equal(attributesOf(node('button', { position: 2, set_size: 3 }))['aria-posinset'], null);
  assert.equal(attributesOf(node('list_item', { position: 2, set_size: 3 }))['aria-posinset'], '2');
});

test('a disabled control stays in the tab order and says so', () => {
  const attributes = set(attributesOf(node('button', { disabled: true })));
  assert.equal(attributes['aria-disabled'], 'true');
  assert.equal(attributes.tabindex, undefined);
  assert.equal('disabled' in attributes, false);
});

test('radios of one parent are one native group', () => {
  const [a, b] = [1, 2].map((id) => attributesOf(node('radio', { id, parent: 'answers' })).name);
  assert.equal(a, b);
  assert.notEqual(a, attributesOf(node('radio', { parent: 'others' })).name);
});

test('only an h1, a dialog and what asks for it take focus from scripts alone', () => {
  assert.equal(attributesOf(node('heading', { level: 1 })).tabindex, '-1');
  assert.equal(attributesOf(node('heading', { level: 2 })).tabindex, null);
  assert.equal(attributesOf(node('paragraph', { focusable: true })).tabindex, '-1');
  assert.equal(attributesOf(node('button', { focusable: true })).tabindex, null);
});

test('a link that leaves the page tells nothing of where it came from', () => {
  const away = attributesOf(node('link', { value: 'https://example.org/' }));
  assert.equal(away.rel, 'noopener noreferrer');
  assert.equal(attributesOf(node('link', { value: '#help' })).target, null);
});

test('controls are those that a person can act on', () => {
  for (const role of ['button', 'toggle', 'disclosure', 'radio', 'checkbox', 'spin', 'link']) assert.ok(isControl(node(role)), role);
  for (const role of ['paragraph', 'list_item', 'dialog', 'image']) assert.ok(!isControl(node(role)), role);
});

test('a box inside its scroll area is not clipped', () => {
  assert.equal(clipOf(node('button')), '');
  assert.equal(clipOf(node('button', { clip: [0, 0, 200, 200] })), '');
});

test('what sticks out of the scroll area is cut off on that side', () => {
  assert.equal(clipOf(node('button', { rect: [0, 180, 100, 50], clip: [0, 0, 200, 200] })), 'inset(-10px -10px 30px -10px)');
  assert.equal(clipOf(node('button', { rect: [0, -20, 100, 50], clip: [0, 0, 200, 200] })), 'inset(20px -10px -10px -10px)');
});

test('a box wholly outside hits nothing', () => {
  assert.equal(clipOf(node('button', { rect: [0, 900, 100, 50], clip: [0, 0, 200, 200] })), 'inset(50%)');
  assert.equal(clipOf(node('button', { rect: [0, 200, 100, 50], clip: [0, 0, 200, 200] })), 'inset(50%)');
});

test('children keep their order; those of an unknown parent are at the root', () => {
  const families = familiesOf([{ id: 'a' }, { id: 'b', parent: 'a' }, { id: 'c', parent: 'gone' }, { id: 'd', parent: 'a' }]);
  assert.deepEqual([...families], [['', ['a', 'c']], ['a', ['b', 'd']]]);
});
