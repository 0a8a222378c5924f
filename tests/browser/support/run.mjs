// The walk of walk.mjs as tests: every family, one way of working the page, one browser.
import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { anyAnswer, setAnswer } from './answers.mjs';
import { closePage, k_sizes, launch, openApp } from './browser.mjs';
import { answerOf, familyFromAssets, questionOnScreen } from './person.mjs';
import { k_all_kinds, practise, toPractise } from './practice.mjs';
import { serveSite } from './sites.mjs';
import { k_families, openFamily, takeCheck, walkThrough } from './walk.mjs';
import { byReader } from './ways.mjs';

// The site and a browser for a whole file: {url, with(wish, use)}; use(page) gets a fresh page. every: what all of its
// pages wish; how: see launch.
export function appForTests(every = { unseen: true }, how = {}) {
  const app = {
    with: async (its_own, use) => {
      const wish = { ...every, ...its_own };
      const page = await openApp(app.browser, app.site.url + (wish.query ?? ''), wish);
      page.setDefaultTimeout(60_000);
      try {
        return await use(page);
      } finally {
        await closePage(page);
      }
    },
  };
  before(async () => { Object.assign(app, { site: await serveSite(), browser: await launch([], how) }); });
  after(async () => { await app.browser?.close(); await app.site?.close(); });
  return app;
}

// Kinds of the content, and how the tree shows them.
const k_tree_kinds = { one: 'radio', picture: 'radio', several: 'checkbox', order: 'order', timing: 'timing', numbers: 'number' };
const k_kinds = [...new Set(Object.values(k_tree_kinds))].sort();

// What did not come up by itself: a check whose practice has every kind, and there what is still to be met.
async function meetTheRest(app, way, wish, met) {
  const family = familyFromAssets(k_all_kinds.family);
  const person = { lacks: k_all_kinds.lacks, holds: [] };
  await app.with({ query: '?seed=11', ...wish }, async (page) => {
    const [reader, hand] = [byReader(page), way(page)];
    await openFamily(reader, family.id);
    await takeCheck(reader, (read) => {
      const wish = answerOf(family, questionOnScreen(family, read), person);
      if (met.has(read.kind) || wish.unsure) return wish;
      met.add(read.kind);
      return { ...wish, by: hand };
    });
    const meet = async (read) => {
      if (met.has(read.kind)) return false;
      await setAnswer(hand, read, anyAnswer(read, 0));
      await hand.press('button', 'Check my answer');
      return met.add(read.kind);
    };
    for (const { name, worth } of toPractise(family, person, (kind) => met.has(k_tree_kinds[kind]))) {
      if (worth()) await practise(reader, name, { meet, enough: () => !worth() });
    }
  });
}

// Most of a run is waiting for the page to rest: all at a time.
export function walkEveryFamily(way, wish = {}, how = {}) {
  const app = appForTests({ unseen: true }, how);
  const met = new Set();
  const on = { size: k_sizes.phone, ...wish };
  describe('a full run', { concurrency: 4 }, () => {
    for (const [n, family] of Object.keys(k_families).entries()) {
      test(family, (context) => app.with({ query: `?seed=${n + 1}`, ...on }, async (page) => {
        const hand = way(page);
        for (const kind of await walkThrough(hand, family)) met.add(kind);
        if (hand.swipes !== undefined) context.diagnostic(`${hand.swipes} swipes`);
      }));
    }
  });
  test('every kind of question, each at least once', async () => {
    if (met.size < k_kinds.length) await meetTheRest(app, way, on, met);
    assert.deepEqual([...met].sort(), k_kinds);
  });
}
