// Firefox: a whole run, practice and back by real keys alone; by real clicks on the canvas alone; by a finger alone.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { walkThrough } from '../browser/support/walk.mjs';
import { byKeys, byMouse, byTouch } from '../browser/support/ways.mjs';
import { firefoxForTests } from './support/firefox.mjs';

const app = firefoxForTests();

test('by keyboard: spray', () => app.with({ query: '?seed=1' }, (page) => walkThrough(byKeys(page), 'spray')));
test('by mouse: powder-cover', () => app.with({ query: '?seed=3' }, (page) => walkThrough(byMouse(page), 'powder-cover')));
test('by finger: powder-lever', () => app.with({ query: '?seed=2' }, async (page) => {
  const way = byTouch(page);
  await walkThrough(way, 'powder-lever');
  assert.ok(way.swipes > 0, 'nothing was drawn along by the finger');
}));
