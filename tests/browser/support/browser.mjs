// Debian's Chromium for tests: start it, open a page as a phone, tablet or screen would, end it.
// Each test file has a browser of its own; how many files run at a time is the caller's (ci/lib/stages.sh).
import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';
import { drawOnlyForPictures } from './unseen.mjs';

// One engine, from one source package: with the windows, menus and stores of a browser around it, or without them,
// which opens a page for a third of the work. Files that test what is around the page, and one whole run of each
// family, take the browser.
const k_browser = '/usr/bin/chromium', k_engine = '/usr/bin/chromium-headless-shell';
// The page is put together without it: less work where the processor draws all. Benchmarks do without this flag.
const k_quick = ['--disable-gpu-compositing'];
const k_flags = [
  '--no-sandbox', '--no-first-run', '--disable-quic', '--disable-background-networking',
  '--disable-component-update', '--disable-sync', '--use-angle=swiftshader', '--enable-unsafe-swiftshader',
];

export const k_sizes = {
  phone: { width: 360, height: 640 }, tablet: { width: 768, height: 1024 }, screen: { width: 1920, height: 1080 },
};

// whole: the browser, not the engine alone; quick: as above.
export async function launch(flags = [], { whole = false, quick = k_quick } = {}) {
  const executablePath = whole ? k_browser : k_engine;
  if (!existsSync(executablePath)) throw new Error(`${executablePath} is missing: ci/setup browser installs it`);
  return chromium.launch({ executablePath, headless: true, args: [...k_flags, ...quick, ...flags] });
}

// wish: {size, density, dark, touch, calm (reduced motion), forced (forced colours), before (init script), unseen
// (drawn only when a picture is taken: unseen.mjs), keeps (itself for use without a network)}.
// page.complaints holds console errors and uncaught exceptions.
export async function openPage(browser, url, wish = {}) {
  const context = await browser.newContext({
    viewport: wish.size ?? k_sizes.phone, deviceScaleFactor: wish.density ?? 1, hasTouch: wish.touch ?? false,
    colorScheme: wish.dark ? 'dark' : 'light', reducedMotion: wish.calm ? 'reduce' : 'no-preference',
    forcedColors: wish.forced ? 'active' : 'none', locale: wish.locale ?? 'en-GB',
    // Else a page that is loaded again answers from what it kept, and not what a test sends.
    serviceWorkers: wish.keeps ? 'allow' : 'block', ...wish.context,
  });
  const page = await context.newPage();
  page.complaints = [];
  page.on('console', (message) => { if (message.type() === 'error') page.complaints.push(message.text()); });
  page.on('pageerror', (error) => page.complaints.push(String(error)));
  if (wish.unseen) await drawOnlyForPictures(page);
  if (wish.before) await page.addInitScript(wish.before);
  if (wish.route) await wish.route(page);
  await page.goto(url);
  return page;
}

export const probe = (page, options = {}) => page.evaluate((wanted) => window.rehale.probe?.(wanted), options);

// Resolves once the page has started and, from now on, drawn no frame for `quiet` ms; or shows a problem.
export async function waitForIdle(page, { quiet = 80, within = 60_000 } = {}) {
  const begun = `idle${Math.random()}`;
  await page.waitForFunction(([still, name]) => {
    const { rehale } = window;
    if (rehale?.problem) return true;
    if (!rehale?.started || !rehale.probe) return false;
    const { frames, pending } = rehale.probe();
    const seen = (window[name] ??= { frames: -1, at: 0 });
    if (pending || frames !== seen.frames) Object.assign(seen, { frames, at: performance.now() });
    if (frames === 0 || performance.now() - seen.at < still) return false;
    delete window[name];
    return true;
  }, [quiet, begun], { timeout: within, polling: 20 });
}

export async function openApp(browser, url, wish = {}) {
  const page = await openPage(browser, url, wish);
  await waitForIdle(page);
  return page;
}

export async function closePage(page) { await page.context().close(); }
