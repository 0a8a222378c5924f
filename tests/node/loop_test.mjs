// web/js/loop.js with a scheduler made by hand: frames only when asked for, none while hidden.
import assert from 'node:assert/strict';
import test from 'node:test';
import { Loop } from '../../web/js/loop.js';

function setup() {
  const queue = [], timers = [], clock = { ms: 1000, a_frame: 10 };
  const page = { hidden: false };
  const host = {
    requestAnimationFrame: (call) => queue.push(call), cancelAnimationFrame: () => { queue.length = 0; },
    setTimeout: (call, ms) => { timers.push({ call, ms }); return timers.length; },
    clearTimeout: (id) => { if (id) timers[id - 1].cleared = true; }, performance: { now: () => clock.ms },
  };
  let drawn = 0, woken = 0;
  const loop = new Loop({ draw: () => { drawn += 1; clock.ms += clock.a_frame; }, wake: () => { woken += 1; }, host, page });
  return { loop, page, queue, timers, clock, turn: () => queue.splice(0).forEach((call) => call()), drawn: () => drawn, woken: () => woken };
}

test('nobody asks, nothing is drawn', () => {
  const { turn, drawn, queue } = setup();
  turn();
  assert.equal(drawn(), 0);
  assert.equal(queue.length, 0);
});

test('a frame that takes longer than 50 ms is counted as late', () => {
  const { loop, turn, clock } = setup();
  for (const ms of [10, 50, 51, 300]) {
    clock.a_frame = ms;
    loop.askFrame('test');
    turn();
  }
  assert.equal(loop.late, 2);
});

test('many who ask before the next frame get one frame', () => {
  const { loop, turn, drawn } = setup();
  ['pointer', 'pointer', 'fetch'].forEach((cause) => loop.askFrame(cause));
  turn();
  turn();
  assert.equal(drawn(), 1);
  assert.deepEqual([...loop.causes], [['pointer', 2], ['fetch', 1]]);
});

test('a hidden page draws nothing, and one frame when it is seen again', () => {
  const { loop, page, turn, drawn } = setup();
  page.hidden = true;
  loop.askFrame('timer');
  turn();
  assert.equal(drawn(), 0);
  page.hidden = false;
  loop.payOwed();
  turn();
  assert.equal(drawn(), 1);
});

test('a page hidden between asking and drawing waits too', () => {
  const { loop, page, turn, drawn } = setup();
  loop.askFrame('pointer');
  page.hidden = true;
  turn();
  assert.equal(drawn(), 0);
  page.hidden = false;
  loop.payOwed();
  turn();
  assert.equal(drawn(), 1);
});

test('a new deadline replaces the old one', () => {
  const { loop, timers } = setup();
  loop.askWake(1500);
  loop.askWake(1200.4);
  assert.deepEqual(timers.map(({ ms, cleared }) => [ms, Boolean(cleared)]), [[500, true], [201, false]]);
});

test('after stop nothing runs any more', () => {
  const { loop, turn, drawn, timers } = setup();
  loop.askFrame('pointer');
  loop.stop();
  loop.askFrame('pointer');
  loop.askWake(2000);
  turn();
  assert.equal(drawn(), 0);
  assert.equal(timers.length, 0);
});
