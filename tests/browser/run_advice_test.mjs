// A person with one known wrong habit is told exactly that one (issue 2, "Outside checks"); who does everything
// right is told nothing to mend. Whose answer shows what: assets/families/<family>/{procedure,questions}.json.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { assertOnlyAdvice, assertTheRest } from './support/advice.mjs';
import { find } from './support/hands.mjs';
import { answerOf, familyFromAssets, questionOnScreen } from './support/person.mjs';
import { appForTests } from './support/run.mjs';
import { openFamily, takeCheck } from './support/walk.mjs';
import { byReader } from './support/ways.mjs';

const k_habits = {
  spray: { lacks: ['hold-upright', 'breathe-then-press'], holds: 'sucks-hard' },
  'powder-lever': { lacks: ['not-into-device', 'seal-lips'], holds: 'shakes-it' },
  'powder-cover': { lacks: ['seal-lips-vents-clear', 'no-close-before-breath'], holds: 'breathes-slowly' },
  'soft-mist': { lacks: ['seal-lips-vents-clear', 'slow-deep'], holds: 'turns-with-cap-open' },
};
const k_seed = 5;
const k_nothing_to_mend = 'You told us the right way on all the steps that matter most. Well done.';

const app = appForTests();
const nameOf = (list, id) => list.find((one) => one.id === id).name;

// The whole check as this person; use(page, ids of the questions asked) sees the result.
const asPerson = (family, person, use) => app.with({ query: `?seed=${k_seed}`, calm: true }, async (page) => {
  const way = byReader(page);
  await openFamily(way, family.id);
  const asked = await takeCheck(way, (question) => answerOf(family, questionOnScreen(family, question), person));
  await use(page, asked.map((question) => questionOnScreen(family, question).id));
  assert.deepEqual(page.complaints, []);
});

// The log is whole, in turn, and its times rise. Twin in C++: tests/core/exchange (there also truncated logs).
async function assertLog(page, family, asked) {
  const log = JSON.parse(await page.evaluate(() => window.rehale.exportRun()));
  assert.deepEqual([log.schema, log.kind], [1, 'rehale-run']);
  const [begin, ...events] = log.events;
  assert.deepEqual([begin.what, begin.family, Number(begin.seed)], ['begin', family.id, k_seed]);
  assert.deepEqual(events.map(({ what, question }) => [what, question]),
    asked.flatMap((question) => [['shown', question], ['answered', question]]));
  for (const [n, { at_ms: at }] of log.events.entries()) {
    if (n === 0) continue;
    const before = log.events[n - 1];
    const rises = log.events[n].what === 'answered' ? at > before.at_ms : at >= before.at_ms;
    assert.ok(rises, `event ${n}: ${at} after ${before.at_ms}`);
  }
}

function testFamily(family, { lacks, holds }) {
  for (const technique of lacks) {
    test(`${family.id}: lacks ${technique}`, () => asPerson(family, { lacks: [technique], holds: [] }, async (page, asked) => {
      await assertOnlyAdvice(page, family, { technique, name: nameOf(family.techniques, technique) });
      await assertLog(page, family, asked);
    }));
  }
  test(`${family.id}: holds ${holds}`, () => {
    const { name, rules_out: technique } = family.misconceptions.find((one) => one.id === holds);
    const person = { lacks: [technique], holds: [holds] };
    return asPerson(family, person, (page) => assertOnlyAdvice(page, family, { technique, name }));
  });
  test(`${family.id}: does everything right`, () => asPerson(family, { lacks: [], holds: [] }, async (page, asked) => {
    assert.equal(await find(page, 'group', 'To do better').count(), 0);
    assert.equal(await find(page, 'button', 'Work on the first one').count(), 0);
    assert.equal(await page.getByRole('paragraph').filter({ hasText: k_nothing_to_mend }).count(), 1);
    await assertTheRest(page, family, '');
    await assertLog(page, family, asked);
  }));
}

describe('a run', { concurrency: 4 }, () => {
  for (const [id, habits] of Object.entries(k_habits)) testFamily(familyFromAssets(id), habits);

  test('the same seed and the same answers: the same questions', async () => {
    const family = familyFromAssets('spray');
    const runs = [];
    const once = () => asPerson(family, { lacks: ['hold-upright'], holds: [] }, (page, asked) => { runs.push(asked); });
    await Promise.all([once(), once()]);
    assert.deepEqual(runs[0], runs[1]);
  });
});
