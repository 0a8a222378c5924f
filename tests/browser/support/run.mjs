// The walk of walk.mjs as tests: every family, one way of working the page, one browser.
import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { anyAnswer, readQuestion, setAnswer } from './answers.mjs';
import { closePage, k_sizes, launch, openApp } from './browser.mjs';
import { serveSite } from './sites.mjs';
import { k_families, onQuestion, openFamily, walkThrough } from './walk.mjs';
import { byReader } from './ways.mjs';

// The site and a browser for a whole file: {url, with(wish, use)}; use(page) gets a fresh page.
export function appForTests() {
  const app = {
    with: async (wish, use) => {
      const page = await openApp(app.browser, app.site.url + (wish.query ?? ''), wish);
      page.setDefaultTimeout(60_000);
      try {
        return await use(page);
      } finally {
        await closePage(page);
      }
    },
  };
  before(async () => { Object.assign(app, { site: await serveSite(), browser: await launch() }); });
  after(async () => { await app.browser?.close(); await app.site?.close(); });
  return app;
}

const k_kinds = ['checkbox', 'number', 'order', 'radio', 'timing'];

// More checks in one tab until each kind has come up. Only what is still to be met is answered this way.
async function meetTheRest(app, way, wish, met) {
  await app.with({ query: '?seed=11', ...wish }, async (page) => {
    const [reader, hand] = [byReader(page), way(page)];
    await openFamily(reader, 'spray');
    for (let turn = 0; met.size < k_kinds.length && turn < 60; turn += 1) {
      const question = await readQuestion(page);
      if (met.has(question.kind)) {
        await reader.press('button', "I'm not sure");
      } else {
        await setAnswer(hand, question, anyAnswer(question, turn));
        await hand.press('button', 'Next');
        met.add(question.kind);
      }
      if (await onQuestion(page)) continue;
      await reader.press('button', 'Check again');
      await reader.press('button', 'Start');
    }
  });
}

// Most of a run is waiting for the page to rest: two at a time.
export function walkEveryFamily(way, wish = {}) {
  const app = appForTests();
  const met = new Set();
  const on = { size: k_sizes.phone, ...wish };
  describe('a full run', { concurrency: 2 }, () => {
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
