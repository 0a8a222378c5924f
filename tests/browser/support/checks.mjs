// What tests hold against a page: axe, boxes as drawn, idleness; and how they look at it.
import { readFileSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { k_sizes, openApp, closePage, probe, waitForIdle } from './browser.mjs';

const k_axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

// All rules of axe-core with target-size switched on (it is off by default). Returns the violations,
// each as "rule: element".
export async function axe(page) {
  if (!await page.evaluate(() => 'axe' in window)) await page.evaluate(k_axe);
  return page.evaluate(async () => {
    const { violations } = await window.axe.run(document, {
      rules: { 'target-size': { enabled: true }, 'color-contrast': { enabled: true } }, resultTypes: ['violations'],
    });
    return violations.flatMap((rule) => rule.nodes.map((node) => `${rule.id}: ${node.html} (${node.failureSummary})`));
  });
}

// The accessibility tree as text, by the testing library's own reading of the page.
export const tree = (page) => page.locator('body').ariaSnapshot();

// The tree that Chromium hands to screen readers: {role, name, description, and states that are set}, in
// order. Unlike the testing library it leaves out what is inert.
export async function spoken(page) {
  const client = await page.context().newCDPSession(page);
  const { nodes } = await client.send('Accessibility.getFullAXTree');
  await client.detach();
  return nodes.filter((node) => !node.ignored && !['InlineTextBox', 'StaticText', 'none', 'generic'].includes(node.role?.value))
    .map((node) => ({
      role: node.role?.value, name: node.name?.value ?? '', description: node.description?.value ?? '',
      ...Object.fromEntries((node.properties ?? []).map((property) => [property.name, property.value.value])),
    }));
}

// Mirror boxes further than `most` CSS px from what C++ drew, on any edge.
export async function strayBoxes(page, most = 2) {
  return page.evaluate((limit) => window.rehale.probe({ rects: true }).rects.flatMap(({ id, role, rect }) => {
    const box = document.querySelector(`[data-id="${CSS.escape(id)}"]`)?.getBoundingClientRect();
    if (!box) return [`${role} ${id}: no element`];
    const [x, y, w, h] = rect;
    const far = Math.max(Math.abs(box.left - x), Math.abs(box.top - y), Math.abs(box.right - x - w),
      Math.abs(box.bottom - y - h));
    return far > limit ? [`${role} ${id}: ${far.toFixed(1)} px`] : [];
  }), most);
}

// Frames drawn while nothing is done for so long.
export async function framesWhileIdle(page, ms) {
  await waitForIdle(page);
  const before = (await probe(page)).frames;
  await page.waitForTimeout(ms);
  return (await probe(page)).frames - before;
}

// Calls look(page, label) at three sizes, light and dark; saves what it leaves on screen to `folder`.
export async function screenshots(browser, url, folder, look = async () => {}) {
  await mkdir(folder, { recursive: true });
  for (const [name, size] of Object.entries(k_sizes)) {
    for (const dark of [false, true]) {
      const page = await openApp(browser, url, { size, dark, touch: name !== 'screen' });
      const label = `${name}-${dark ? 'dark' : 'light'}`;
      await look(page, label);
      await page.screenshot({ path: path.join(folder, `${label}.png`) });
      await closePage(page);
    }
  }
}

// Slow line and slow processor, by Chromium's own emulation. kbps down, latency ms, cpu: times slower.
export async function throttle(page, { kbps, latency_ms, cpu = 1 }) {
  const client = await page.context().newCDPSession(page);
  await client.send('Network.enable');
  await client.send('Network.emulateNetworkConditions', {
    offline: false, latency: latency_ms, downloadThroughput: kbps * 125, uploadThroughput: kbps * 125,
  });
  await client.send('Emulation.setCPUThrottlingRate', { rate: cpu });
}
