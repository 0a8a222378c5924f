// The files that the page keeps for itself, for use without a network (web/js/sw.js).

// Playwright's waitForFunction takes a promise for a yes: this asks until what it holds is one.
export async function until(page, asked) {
  const end = Date.now() + 60_000;
  while (!await page.evaluate(asked).catch(() => false)) {  // the page is being loaded anew: asked again
    if (Date.now() > end) throw new Error(`never true: ${asked}`);
    await page.waitForTimeout(100);
  }
}

export const isKept = (page) => until(page, async () => {
  const registration = await navigator.serviceWorker.getRegistration();
  if (!registration?.active) return false;
  const names = await caches.keys();
  const whole = await Promise.all(names.map(async (name) => (await (await caches.open(name)).keys()).some(({ url }) => url.endsWith('?whole'))));
  return registration.active.state === 'activated' && whole.some(Boolean);
});
