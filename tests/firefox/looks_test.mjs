// Firefox tells the page what the system wishes for (CSS Media Queries 5: forced-colors, prefers-color-scheme), by the settings that stand for it in about:config: the page's ground follows; by mouse, settings win.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { serveSite } from '../browser/support/sites.mjs';
import { awaitScreen } from '../browser/support/walk.mjs';
import { byMouse } from '../browser/support/ways.mjs';
import { ground } from '../browser/support/drawn.mjs';
import { launch, openApp } from './support/firefox.mjs';
import { lookAt } from './support/look.mjs';

const site = await serveSite();
after(() => site.close());

// [name, settings, media query, ground (theme.cpp)]
const k_wishes = [
  ['colours are forced', { 'browser.display.document_color_use': 2 }, '(forced-colors: active)', 'ffffff'],
  ['dark', { 'layout.css.prefers-color-scheme.content-override': 0 }, '(prefers-color-scheme: dark)', '171418'],
];

for (const [label, settings, query, wanted] of k_wishes) {
  test(label, async () => {
    const browser = await launch({ settings });
    try {
      const page = await openApp(browser, `${site.url}?seed=3`);
      await awaitScreen(page, 'choose-device');
      assert.ok(await page.evaluate((wish) => matchMedia(wish).matches, query), query);
      assert.equal(await ground(page), wanted);
      await lookAt(page, `wish-${label.replaceAll(' ', '-')}`);
      const way = byMouse(page);
      await way.press('button', 'Spray inhaler');
      await awaitScreen(page, 'ready');
      assert.equal(await ground(page), wanted);
      await way.press('button', 'Settings');
      await way.press('radio', 'Light');
      await way.press('button', 'Close');
      assert.equal(await ground(page), label === 'dark' ? 'fbf7ef' : wanted);
      assert.deepEqual(page.complaints, []);
    } finally {
      await browser.close();
    }
  });
}
