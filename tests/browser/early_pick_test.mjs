// A device can be picked before the app is there: on a slow line nobody waits for the sake of waiting.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { closePage, openPage, waitForIdle } from './support/browser.mjs';
import { axe } from './support/checks.mjs';
import { appForTests } from './support/run.mjs';
import { awaitScreen, k_families } from './support/walk.mjs';

const k_no_pictures = (page) => page.route('**/scenes.txt', (route) => route.fulfill({ status: 404, body: '' }));

const app = appForTests();

// The page while its WASM is still on its way; use(page, arrive): arrive() lets it come.
async function early(use) {
  const page = await openPage(app.browser, 'about:blank', {});
  let arrive;
  const held = new Promise((go) => { arrive = go; });
  await page.route('**/*.wasm', async (route) => { await held; await route.continue(); });
  try {
    await page.goto(app.site.url, { waitUntil: 'commit' });
    await page.locator('#early button').first().waitFor();
    await use(page, arrive);
    assert.deepEqual(page.complaints, []);
  } finally {
    arrive();
    await closePage(page);
  }
}

test('every device can be picked, large enough, and nothing is amiss for readers', () => early(async (page) => {
  assert.deepEqual(await page.locator('#early button').allTextContents(), Object.values(k_families));
  for (const button of await page.locator('#early button').all()) {
    assert.ok((await button.boundingBox()).height >= 64);
  }
  assert.deepEqual(await axe(page), []);
}));

test('a device picked early is the one that the app begins with; its files are asked for once', () => early(async (page, arrive) => {
  const asked = [];
  page.on('request', (request) => { if (request.url().includes('/families/')) asked.push(new URL(request.url()).pathname); });
  const button = page.getByRole('button', { name: k_families['soft-mist'] });
  await button.focus();
  await page.keyboard.press('Enter');
  assert.equal(await button.getAttribute('aria-pressed'), 'true');
  assert.ok(await page.getByRole('status').isVisible());
  arrive();
  await awaitScreen(page, 'ready');
  assert.equal(await page.getByRole('heading', { level: 1 }).textContent(), k_families['soft-mist']);
  assert.equal(await page.locator('#early').count(), 0);
  const own = asked.filter((path) => path.includes('/soft-mist/'));
  assert.ok(own.length >= 3, `${own}`);
  assert.deepEqual(own.sort(), [...new Set(own)].sort());
}));

// Between the app's start and its first frame: the moment when a tap used to be lost.
test('a device picked at the last moment is picked, too', async () => {
  const before = () => {
    let started = false;
    const look = () => {
      const early = document.querySelector('#early [data-family="soft-mist"]');
      if (!window.rehale?.started) setTimeout(look);
      else if (early) { started = true; early.click(); }
      window.pickedLate = started;
    };
    setTimeout(look);
    // The first frame is held back until the tap was made.
    const draw = window.requestAnimationFrame.bind(window);
    window.requestAnimationFrame = (go) => draw(function wait(at) { if (started || !document.querySelector('#early')) go(at); else draw(wait); });
  };
  await app.with({ before }, async (page) => {
    await awaitScreen(page, 'ready');
    assert.ok(await page.evaluate(() => window.pickedLate));
    assert.equal(await page.getByRole('heading', { level: 1 }).textContent(), k_families['soft-mist']);
  });
});

test('without an early pick the app asks which device it is', () => early(async (page, arrive) => {
  arrive();
  await awaitScreen(page, 'choose-device');
}));

// Every family's picture arrives: the screen differs from the one that gets none.
for (const family of Object.keys(k_families)) {
  test(`the picture of ${family} is drawn`, async () => {
    const shot = (wish) => app.with({ query: `?family=${family}`, calm: true, ...wish }, async (page) => {
      await awaitScreen(page, 'ready');
      if (!wish.route) await page.waitForFunction(() => performance.getEntriesByName(`${window.rehale.base}content/scenes.txt`).length > 0);
      await waitForIdle(page, { quiet: 300 });
      return page.screenshot();
    });
    const [without, again, drawn] = [await shot({ route: k_no_pictures }), await shot({ route: k_no_pictures }), await shot({})];
    assert.ok(without.equals(again), 'two screens without a picture are the same');
    assert.ok(!drawn.equals(without), 'the picture is not there');
  });
}
