// The published schema of a run's JSON takes every log we write, and refuses spoilt ones.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import Ajv from 'ajv';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const read = (name) => readFileSync(path.join(root, name), 'utf8');
const valid = new Ajv().compile(JSON.parse(read('assets/run.schema.json')));
const logs = read('tests/fixtures/codes/version1.txt').trim().split('\n').map((line) => line.split('\t')[1]).filter(Boolean);

test('logs as the program writes them are valid', () => {
  assert.equal(logs.length, 4);
  for (const log of logs) assert.ok(valid(JSON.parse(log)), JSON.stringify(valid.errors));
});

test("a log with an inhaler's numbers beside it is valid, with other words it is not", () => {
  const care = read('tests/fixtures/codes/version1.txt').split('\n').find((line) => line.startsWith('C1')).split('\t')[0];
  assert.ok(valid({ ...JSON.parse(logs[0]), care }));
  assert.ok(!valid({ ...JSON.parse(logs[0]), care: 'soon' }));
});

test('spoilt logs are not', () => {
  const spoil = (change) => {
    const log = JSON.parse(logs[0]);
    change(log, log.events);
    return !valid(log);
  };
  assert.ok(spoil((log) => { log.kind = 'run'; }));
  assert.ok(spoil((log) => { log.schema = 2; }));
  assert.ok(spoil((log, events) => { events.shift(); }));
  assert.ok(spoil((log, events) => { events[0].seed = 7; }));
  assert.ok(spoil((log, events) => { delete events[2].answer; }));
  assert.ok(spoil((log, events) => { events[2].answer = { picked: [], amount: 1 }; }));
  assert.ok(spoil((log, events) => { events[1].at_ms = -1; }));
  assert.ok(spoil((log, events) => { events[1].name = 'x'; }));
  assert.ok(spoil((log) => { log.events = []; }));
});
