// Every screen in a narrow window and with words twice as large (support/reflow_checks.mjs): nothing is cut, nothing
// scrolls sideways. Settings, help and reading aloud stand at the same place on all of them (WCAG 2.2 3.2.3, 3.2.6).
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { probe, waitForIdle } from './support/browser.mjs';
import { k_voices, playVoices } from './support/fake_voice.mjs';
import { lookForCuts } from './support/reflow_checks.mjs';
import { appForTests } from './support/run.mjs';
import { tour } from './support/tour.mjs';
import { byReader } from './support/ways.mjs';

const app = appForTests();
const voices = `(${playVoices})(${JSON.stringify({ voices: k_voices })});`;
const settings = (text) => `localStorage.setItem('rehale.settings', ${JSON.stringify(text)});`;
const k_looks = {
  '320 px wide, text at 200 %': { size: { width: 320, height: 640 }, before: voices + settings('1 text=200') },
  '1280 × 1024 at 400 % zoom': { size: { width: 320, height: 256 }, density: 4, before: voices },
  'a phone on its side': { size: { width: 640, height: 360 }, before: voices },
  'a phone on its side, text at 200 %': { size: { width: 640, height: 360 }, before: settings('1 text=200 hand=left') },
};
const k_same_place = ['look-button', 'help', 'read-aloud'];

// Where the three stand; [] behind a dialog, where they are the same anyway.
async function corners(page) {
  const { rects } = await probe(page, { rects: true });
  return Object.fromEntries(rects.filter(({ id }) => k_same_place.includes(id)).map(({ id, rect }) => [id, rect.slice(0, 3).join()]));
}

// A check that cannot find anything would prove nothing.
test('what is cut is found', () => app.with({ query: '?seed=7', calm: true, size: { width: 320, height: 640 } }, async (page) => {
  assert.deepEqual(await lookForCuts(page), []);
  await page.evaluate(() => {
    const mark = Object.assign(document.createElement('div'), { id: 'mark' });
    Object.assign(mark.style, { position: 'fixed', right: '0', top: '300px', width: '3px', height: '2px', background: 'black' });
    document.body.append(mark);
  });
  assert.match((await lookForCuts(page)).join(), /at the rim, row 300/);
  await page.evaluate(() => {
    document.getElementById('mark').remove();
    const { probe } = window.rehale;
    window.rehale.probe = (wish) => {
      const told = probe(wish);
      if (told.rects) Object.assign(told.rects.find(({ id }) => id === 'title'), { rect: [-3, 0, 40, 20] });
      return told;
    };
  });
  assert.match((await lookForCuts(page)).join(), /title lies from -3.*title cannot be scrolled down to/);
}));

describe('every screen', { concurrency: 2 }, () => {
  for (const [label, look] of Object.entries(k_looks)) {
    test(label, () => app.with({ query: '?seed=7', calm: true, ...look }, async (page) => {
      const problems = [];
      if (look.before.includes('setVoices')) await page.locator('[data-id="read-aloud"]').waitFor();
      const first = await corners(page);
      assert.equal(Object.keys(first).length, look.before.includes('setVoices') ? 3 : 2);
      const visit = async (name, { dialog } = {}) => {
        await waitForIdle(page, { quiet: 150 });
        problems.push(...(await lookForCuts(page, { dialog })).map((problem) => `${name}: ${problem}`));
        const here = await corners(page);
        for (const [id, rect] of Object.entries(first)) if (here[id] !== rect) problems.push(`${name}: ${id} stands at ${here[id]}, not ${rect}`);
      };
      await tour(byReader(page), visit).catch((error) => problems.push(`the tour ended: ${error.stack}`));
      assert.deepEqual(problems, []);
      assert.deepEqual(page.complaints, []);
    }));
  }
});
