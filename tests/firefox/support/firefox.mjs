// Debian's Firefox for tests, driven by WebDriver BiDi (npm puppeteer-core). It needs a display, since without one it
// has no WebGL 2: ci/test firefox gives it xvfb's. A page looks to tests/browser/support like one of Playwright's.
import { existsSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import { after, before } from 'node:test';
import puppeteer from 'puppeteer-core';
import { k_sizes, waitForIdle } from '../../browser/support/browser.mjs';
import { serveSite } from '../../browser/support/sites.mjs';
import { Found } from './found.mjs';

const k_program = '/usr/bin/firefox-esr';
const k_settings = {
  'security.fileuri.strict_origin_policy': true,  // puppeteer switches it off; with it, file:// is as people have it
  'intl.accept_languages': 'en-GB, en',
};

// settings: about:config's, with which Firefox tells pages of what the system wishes for.
export async function launch({ calm = true, settings = {} } = {}) {
  if (!existsSync(k_program)) throw new Error(`${k_program} is missing: ci/setup firefox installs it`);
  if (!process.env.DISPLAY) throw new Error("there is no display: ci/test firefox, or xvfb-run -a -s '-screen 0 2000x1300x24' node --test FILE");
  return puppeteer.launch({
    browser: 'firefox', executablePath: k_program, headless: false,
    extraPrefsFirefox: { ...k_settings, 'ui.prefersReducedMotion': calm ? 1 : 0, ...settings },
  });
}

// The calls of Playwright that tests/browser/support makes, over puppeteer's page.
function asPlaywright(real) {
  const page = {
    real, complaints: [], readsItself: true,
    title: () => real.title(),
    goto: (url) => real.goto(url), reload: () => real.reload(),
    evaluate: (run, wanted) => real.evaluate(run, wanted),
    evaluateHandle: (...all) => real.evaluateHandle(...all),
    waitForFunction: (run, wanted, { timeout = 30_000, polling = 50 } = {}) =>
      real.waitForFunction(run, { timeout, polling }, wanted),
    waitForTimeout: (ms) => pause(ms),
    viewportSize: () => real.viewport(),
    screenshot: async ({ path, clip } = {}) => Buffer.from(await real.screenshot({ path, clip })),
    getByRole: (role, wish) => body.getByRole(role, wish),
    locator: (selector) => new Found(real, selector, () => real.$$(selector)),
    touchscreen: { tap: (x, y) => real.touchscreen.tap(x, y) },
    finger: {
      down: ({ x, y }) => real.touchscreen.touchStart(x, y), move: ({ x, y }) => real.touchscreen.touchMove(x, y),
      up: () => real.touchscreen.touchEnd(),
    },
    keyboard: { press: (keys) => pressed(real, keys), type: (text) => real.keyboard.type(text) },
    mouse: {
      move: (x, y) => real.mouse.move(x, y), down: () => real.mouse.down(), up: () => real.mouse.up(),
      wheel: (deltaX, deltaY) => real.mouse.wheel({ deltaX, deltaY }),
    },
  };
  const body = page.locator('body');
  return page;
}

// 'Shift+Tab' is the one held down, then the other. Past the page's end Tab leads into Firefox's own bars, where this
// driver's keys cannot follow: they would go on to the page, which then takes Enter for nothing. The focus comes
// back to the page's beginning, as after the bars.
async function pressed(real, keys) {
  const [key, ...held] = keys.split('+').reverse();
  for (const each of held) await real.keyboard.down(each);
  await real.keyboard.press(key);
  for (const each of held) await real.keyboard.up(each);
  if (key !== 'Tab' || await real.evaluate(() => document.hasFocus())) return;
  await (await real.browserContext().newPage()).close();
}

// As openApp of tests/browser/support/browser.mjs, in a window with nothing kept in it. page.close() ends it.
export async function openApp(browser, url, { size = k_sizes.phone } = {}) {
  const context = await browser.createBrowserContext();
  const real = await context.newPage();
  const page = asPlaywright(real);
  real.on('console', (message) => { if (message.type() === 'error') page.complaints.push(message.text()); });
  // What page code throws may come as something that is no Error.
  real.on('pageerror', (error) => page.complaints.push(String(error?.message ?? JSON.stringify(error))));
  page.close = () => context.close();
  await real.setViewport({ ...size, deviceScaleFactor: 1 });
  await page.goto(url);
  await waitForIdle(page);
  return page;
}

// As appForTests of tests/browser/support/run.mjs: the site and a browser for a whole file.
export function firefoxForTests(how) {
  const app = {
    with: async (wish, use) => {
      const page = await openApp(app.browser, (wish.url ?? app.site.url) + (wish.query ?? ''), wish);
      try {
        return await use(page);
      } finally {
        await page.close();
      }
    },
  };
  before(async () => { Object.assign(app, { site: await serveSite(), browser: await launch(how) }); });
  after(async () => { await app.browser?.close(); await app.site?.close(); });
  return app;
}
