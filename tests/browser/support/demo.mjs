// The demo page of tests/browser/demo/demo.cpp: opened, and its state read from the line it draws.
import { closePage, launch, openApp } from './browser.mjs';
import { serveDemo } from './sites.mjs';

export const k_demo_size = { width: 1000, height: 800 };

// "count 0 on 0 …" as {count: '0', …}; `text` is the rest of the line.
export async function stateOf(page) {
  const line = await page.locator('[data-id="state"]').textContent();
  const words = line.split(' ');
  const text = words.indexOf('text');
  const pairs = words.slice(0, text);
  return {
    ...Object.fromEntries(pairs.flatMap((word, n) => (n % 2 ? [] : [[word, pairs[n + 1]]]))),
    text: words.slice(text + 1).join(' '),
  };
}

// {url, browser, open(wish) -> page, end()}: each test opens a page of its own.
export async function startDemo(flags = []) {
  const site = await serveDemo();
  const browser = await launch(flags);
  const open = (wish = {}) => openApp(browser, site.url + (wish.query ?? ''), { size: k_demo_size, ...wish });
  return {
    url: site.url, browser, open,
    with: async (wish, use) => {
      const page = await open(wish);
      try {
        return await use(page);
      } finally {
        await closePage(page);
      }
    },
    end: async () => { await browser.close(); await site.close(); },
  };
}
