// The histories that core/recheck is held against are still what ts-fsrs gives.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { committed, make } from '../reference/recheck/make.mjs';

test('histories.txt is what ts-fsrs gives', () => {
  assert.equal(make(), committed());
});
