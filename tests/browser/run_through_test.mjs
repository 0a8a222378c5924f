// The timed run-through on the real page: by keyboard, by touch, by holding, in every family; what it finds, and
// that nothing is drawn while nothing moves. The clock is Playwright's: it moves only when told (support/rehearse.mjs).
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { k_sizes, probe, waitForIdle } from './support/browser.mjs';
import { axe } from './support/checks.mjs';
import { actOut, rehearser, stepsOf, withClock } from './support/rehearse.mjs';
import { appForTests } from './support/run.mjs';

const app = appForTests();
const k_families = ['spray', 'powder-lever', 'powder-cover', 'soft-mist'];
// A hand on the page must see what it presses: nothing is scrolled here. By keyboard the phone's size is used.
const k_large = { size: k_sizes.tablet };
const k_holding = 'Tap to start, tap to stop';
const text = (page) => page.getByRole('main').innerText();

// One run-through from the start to what is told.
async function rehearse(page, way, { family, change, picks = way === 'hold' ? [k_holding] : [] }) {
  const { name, once } = stepsOf(family);
  const person = rehearser(page, way);
  await person.begin(name, picks);
  await actOut(person, once, change);
  await person.press('I am done');
  return person;
}

describe('a dose done well is told so', { concurrency: 2 }, () => {
  for (const way of ['keys', 'touch', 'hold']) {
    for (const family of way === 'keys' ? k_families : ['spray', 'powder-cover']) {
      test(`${family}, by ${way}`, () => app.with({ ...withClock, ...(way !== 'keys' && k_large), touch: way === 'touch', calm: family !== 'spray' }, async (page) => {
        const person = await rehearse(page, way, { family });
        const told = await text(page);
        assert.match(told, /All that you did here went well\./);
        assert.match(told, /This way, you breathe in 1 dose\./);
        assert.match(told, /We cannot see your breath\./);
        const [take] = await person.takes();
        assert.equal(take.family, family);
        const { once } = stepsOf(family);
        assert.deepEqual(take.acts.map(({ step }) => step), once.map(({ id }) => id));
        for (const { id, s } of once.filter((one) => one.s > 0)) {
          const act = take.acts.find(({ step }) => step === id);
          assert.ok(Math.abs(act.end_ms - act.start_ms - s * 1000) <= 40, `${id}: ${act.end_ms - act.start_ms} ms`);
        }
        assert.deepEqual(page.complaints, []);
      }));
    }
  }
});

describe('what differs is told by how much', { concurrency: 2 }, () => {
  const k_cases = [
    ['spray', { 'start-breath': { s: 1.2 } }, /1\.2 seconds\. Aim for 3 to 5 seconds\./],
    ['spray', { 'hold-breath': { s: 4 } }, /4 seconds\. Aim for about 10 seconds\./],
    ['soft-mist', { press: { at_s: 2 } }, /2 seconds after your breath began\./],
    ['soft-mist', { press: null }, /This way, you get no dose\./],
    ['powder-lever', { 'breathe-in-fast': { s: 1.2 } }, /1\.2 seconds\. Aim for 2 to 3 seconds\./],
    ['powder-cover', { 'breathe-out': null }, /You left out: "Breathe out until you feel empty"/],
  ];
  for (const [family, change, says] of k_cases) {
    test(`${family}: ${JSON.stringify(change)}`, () => app.with({ ...withClock, calm: true }, async (page) => {
      await rehearse(page, 'keys', { family, change });
      const told = await text(page);
      assert.match(told, says);
      assert.match(told, /Here is what to work on first\./);
    }));
  }
});

test('nothing is drawn while nothing moves, and while something runs it is', () => app.with(withClock, async (page) => {
  const { name, once } = stepsOf('spray');
  const person = rehearser(page, 'keys');
  const frames = async () => (await probe(page)).frames;
  const drawnIn = async (ms) => { const before = await frames(); await person.pass(ms); return await frames() - before; };
  await person.begin(name);
  await person.pass(1000);  // the first picture moves into place
  assert.equal(await drawnIn(5000), 0);
  await person.press(once[3].label);
  assert.ok(await drawnIn(2000) > 20);
  await person.press(`Stop: ${once[3].label}`);
  await person.pass(1000);
  assert.equal(await drawnIn(5000), 0);
  await person.press('I am done');
  await person.pass(1000);
  assert.equal(await drawnIn(5000), 0);
}));

test('with reduced motion a count is drawn once a second', () => app.with({ ...withClock, calm: true }, async (page) => {
  const { name, once } = stepsOf('spray');
  const person = rehearser(page, 'keys');
  await person.begin(name, ['Practise with the guide']);
  await person.press(once[3].label);
  const before = (await probe(page)).frames;
  await person.pass(3000);
  const drawn = (await probe(page)).frames - before;
  assert.ok(drawn >= 3 && drawn <= 9, `${drawn} frames in 3 s`);
}));

describe('no fault is found by axe', { concurrency: 2 }, () => {
  for (const [label, look] of [['phone, light', { size: k_sizes.phone }], ['screen, dark', { size: k_sizes.screen, dark: true }]]) {
    test(label, () => app.with(look, async (page) => {
      const press = async (name) => {
        await page.getByRole('button', { name, exact: true }).focus();
        await page.keyboard.press('Enter');
        await waitForIdle(page, { quiet: 400 });
      };
      const { name, once } = stepsOf('powder-cover');
      await press(name);
      await page.getByRole('button', { name: 'Do a timed run-through' }).waitFor();
      await press('Do a timed run-through');
      assert.deepEqual(await axe(page), []);
      await press('Start');
      assert.deepEqual(await axe(page), []);
      await press(once[0].label);
      await press('I am done');
      assert.deepEqual(await axe(page), []);
      assert.deepEqual(page.complaints, []);
    }));
  }
});
