// web/js/pointer.js by hand-made events and a hand-made clock. Numbers (400 ms, 8-24 px): toolchain.md 4 and
// the task's own words; taps of older and trembling hands come twice.
import assert from 'node:assert/strict';
import test from 'node:test';
import { PointerInput } from '../../web/js/pointer.js';

const MOVE = 0, DOWN = 1, UP = 2, CANCEL = 3;

function setup() {
  const sent = [], clock = { now: 1000 };
  const input = new PointerInput({
    send: (what, kind, x, y) => sent.push({ what, kind, x, y }), sendWheel: (n) => sent.push({ wheel: n }),
    now: () => clock.now,
  });
  const at = (x, y, more = {}) => ({ pointerId: 1, pointerType: 'touch', button: 0, clientX: x, clientY: y, ...more });
  const tap = (x, y, more) => { input.down(at(x, y, more)); clock.now += 60; input.up(at(x, y, more)); };
  return { input, sent, clock, at, tap, downs: () => sent.filter((event) => event.what === DOWN).length };
}

test('a tap is a move, a press and a release at its place', () => {
  const { sent, tap } = setup();
  tap(50, 60);
  assert.deepEqual(sent.map((event) => event.what), [MOVE, DOWN, MOVE, UP]);
  assert.ok(sent.every((event) => event.x === 50 && event.y === 60 && event.kind === 1));
});

test('a second tap on the same place within 400 ms goes nowhere', () => {
  const { clock, tap, downs } = setup();
  tap(50, 60);
  clock.now += 200;
  tap(58, 64);
  assert.equal(downs(), 1);
});

test('a tap on the same place after 400 ms counts', () => {
  const { clock, tap, downs } = setup();
  tap(50, 60);
  clock.now += 401;
  tap(50, 60);
  assert.equal(downs(), 2);
});

test('a quick tap on another place counts', () => {
  const { clock, tap, downs } = setup();
  tap(50, 60);
  clock.now += 100;
  tap(50, 120);
  assert.equal(downs(), 2);
});

test('a dropped tap does not hold up the next one', () => {
  const { clock, tap, downs } = setup();
  tap(50, 60);
  clock.now += 300;
  tap(50, 60);  // dropped
  clock.now += 150;
  tap(50, 60);  // 510 ms after the first
  assert.equal(downs(), 2);
});

test('a second finger is nobody', () => {
  const { input, sent, at } = setup();
  input.down(at(50, 60));
  input.down(at(200, 200, { pointerId: 2 }));
  input.move(at(210, 200, { pointerId: 2 }));
  input.up(at(210, 200, { pointerId: 2 }));
  assert.ok(sent.every((event) => event.x === 50));
  input.up(at(50, 60));
  assert.equal(sent.at(-1).what, UP);
});

test('only the main mouse button presses, and only its release releases', () => {
  const { input, sent, at, downs } = setup();
  const mouse = { pointerType: 'mouse' };
  input.down(at(1, 1, { ...mouse, button: 2 }));
  assert.equal(downs(), 0);
  input.down(at(1, 1, mouse));
  input.up(at(1, 1, { ...mouse, button: 2 }));
  assert.notEqual(sent.at(-1).what, UP);
});

test('a cancelled press ends as cancelled, not as released', () => {
  const { input, sent, at } = setup();
  input.down(at(50, 60));
  input.cancel(at(50, 60));
  assert.equal(sent.at(-1).what, CANCEL);
  assert.ok(!sent.some((event) => event.what === UP));
});

test('a finger that only moves over the page without pressing is not hover', () => {
  const { input, sent, at } = setup();
  input.move(at(5, 5));
  assert.equal(sent.length, 0);
  input.move(at(5, 5, { pointerType: 'mouse' }));
  assert.equal(sent.length, 1);
});

test('wheel: one notch down is minus one; the browser keeps its zoom', () => {
  const { input, sent } = setup();
  let prevented = 0;
  const wheel = (more) => input.wheel({ deltaY: 100, deltaMode: 0, ctrlKey: false, preventDefault: () => { prevented += 1; }, ...more });
  globalThis.window = { innerHeight: 500 };
  wheel({});
  wheel({ ctrlKey: true });
  wheel({ deltaY: 3, deltaMode: 1 });
  assert.deepEqual(sent.map((event) => event.wheel), [-1, -1.2]);
  assert.equal(prevented, 2);
});

test('recent tells a click that follows a pointer from a key or a reader', () => {
  const { input, clock, tap } = setup();
  assert.equal(input.recent, false);
  tap(1, 1);
  assert.equal(input.recent, true);
  clock.now += 600;
  assert.equal(input.recent, false);
});
