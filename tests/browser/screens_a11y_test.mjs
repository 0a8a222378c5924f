// Every screen of the app, looked over: by axe, by what a screen reader hears, by where things are drawn, at rest.
// What must hold stands with its sources in support/screen_checks.mjs.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { k_sizes, waitForIdle } from './support/browser.mjs';
import { appForTests } from './support/run.mjs';
import { lookOver } from './support/screen_checks.mjs';
import { k_kinds, tour, tourAsked, tourSet } from './support/tour.mjs';
import { awaitScreen } from './support/walk.mjs';
import { byReader } from './support/ways.mjs';

const app = appForTests();

// A set practice for spray and soft-mist, 7 questions, no day, a key that nobody has.
const k_asked = 'A1iIJlc3ByYXlpc29mdC1taXN0gAf29vZQAAkSGyQtNj9IUVpjbHV-h1hBBAcHBwcHBwcHBwcHBwcHBwcHBwcHBwcHBwcHBwcHBw'
  + 'cHBwcHBwcHBwcHBwcHBwcHBwcHBwcHBwcHBwcHBwcHBwfGG5SY';

// All problems of all screens at once: [screen, problem].
function notebook(page) {
  const problems = [];
  const titles = new Map();
  return {
    problems, titles,
    visit: async (name, how) => {
      await waitForIdle(page, { quiet: 150 });
      for (const problem of await lookOver(page, how)) problems.push(`${name}: ${problem}`);
      titles.set(name, await page.title());
    },
  };
}

const k_looks = {
  'at 360 × 640, light': { size: k_sizes.phone },
  'at 1920 × 1080, dark': { size: k_sizes.screen, dark: true, calm: true },
};

describe('every screen', { concurrency: 4 }, () => {
  for (const [label, look] of Object.entries(k_looks)) {
    test(label, () => app.with({ query: '?seed=7', ...look }, async (page) => {
      const { visit, problems, titles } = notebook(page);
      const met = await tour(byReader(page), visit).catch((error) => { problems.push(`the tour ended: ${error.stack}`); });
      assert.deepEqual(problems, []);
      assert.deepEqual([...met].sort(), [...k_kinds].sort());
      assert.deepEqual(page.complaints, []);
      assert.ok(new Set(titles.values()).size >= 8, `titles: ${[...titles]}`);
    }));
  }
  for (const [label, look] of Object.entries(k_looks)) {
    for (const [name, query, walk] of [['set a practice', '#set', tourSet], ['asked', `#a=${k_asked}`, tourAsked]]) {
      test(`${name}, ${label}`, () => app.with({ query, ...look }, async (page) => {
        const { visit, problems } = notebook(page);
        await walk(byReader(page), visit);
        assert.deepEqual(problems, []);
        assert.deepEqual(page.complaints, []);
      }));
    }
  }
  for (const [label, look] of Object.entries(k_looks)) {
    test(`trouble, ${label}`, () => app.with({ query: '?seed=abc', ...look }, async (page) => {
      const { visit, problems } = notebook(page);
      await awaitScreen(page, 'trouble');
      await visit('trouble', { first: true });
      assert.deepEqual(problems, []);
    }));
  }
});
