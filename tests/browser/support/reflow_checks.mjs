// What must hold on every screen in a small window or with large words: nothing cut, no scrolling sideways, everything
// can be brought into view. Sources: WCAG 2.2 1.4.4 (text to 200 %), 1.4.10 (320 CSS px wide, which is 1280 at 400 %),
// 1.3.4 (both orientations), users.md 1.2.
import { probe, waitForIdle } from './browser.mjs';
import { press } from './hands.mjs';

const k_view_share = 0.35;  // of the window's height: less is a slit to read through
const k_rim_px = 4;
const readers = new WeakMap();

const rects = async (page) => (await probe(page, { rects: true })).rects;

// In a page of its own: rows of the picture whose outermost columns are not all of one colour.
async function rowsWithInkAtTheRim(page, rim = k_rim_px) {
  const browser = page.context().browser();
  if (!readers.has(browser)) readers.set(browser, browser.newContext().then((context) => context.newPage()));
  const reader = await readers.get(browser);
  const png = (await page.screenshot({ scale: 'css' })).toString('base64');
  return reader.evaluate(async ([base64, wide]) => {
    const image = await createImageBitmap(new Blob([Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))]));
    const context = new OffscreenCanvas(image.width, image.height).getContext('2d');
    context.drawImage(image, 0, 0);
    const side = (x) => context.getImageData(x, 0, wide, image.height).data;
    const ground = [...context.getImageData(0, 0, 1, 1).data].slice(0, 3);
    const rows = new Set();
    for (const data of [side(0), side(image.width - wide)]) {
      for (let n = 0; n < data.length; n += 4) {
        if (ground.some((level, c) => Math.abs(data[n + c] - level) > 6)) rows.add(Math.floor(n / 4 / wide));
      }
    }
    return [...rows];
  }, [png, rim]);
}

function sideways(nodes, width) {
  return nodes.filter(({ rect: [x, , w] }) => x < -0.5 || x + w > width + 0.5)
    .map(({ id, rect: [x, , w] }) => `${id} lies from ${x} to ${x + w} of ${width}`);
}

// Both ends of the scroll area show the ends of what is in it; what is between can then be scrolled to.
async function ends(page, problems) {
  const inArea = (nodes) => nodes.filter(({ clip }) => clip?.[2] > 0);
  await press(page, 'Home');
  const above = inArea(await rects(page));
  const cutAbove = above.filter(({ rect, clip }) => rect[1] < clip[1] - 0.5);
  await press(page, 'End');
  const below = inArea(await rects(page));
  const cutBelow = below.filter(({ rect, clip }) => rect[1] + rect[3] > clip[1] + clip[3] + 0.5);
  problems.push(...cutAbove.map(({ id }) => `${id} cannot be scrolled down to`), ...cutBelow.map(({ id }) => `${id} cannot be scrolled up to`));
  return below;
}

// dialog: over the screen behind it, which is not looked at.
export async function lookForCuts(page, { dialog = false } = {}) {
  const { width, height } = page.viewportSize();
  const problems = sideways(await rects(page), width);
  const wide = await page.evaluate(() => document.scrollingElement.scrollWidth);
  if (wide > width) problems.push(`the page is ${wide} px wide`);
  await waitForIdle(page);
  if (!dialog) problems.push(...(await rowsWithInkAtTheRim(page)).slice(0, 3).map((y) => `something is drawn at the rim, row ${y}`));
  const behind = dialog ? new Set((await page.locator('#mirror [inert], #mirror [inert] [data-id]')
    .evaluateAll((all) => all.map((element) => element.dataset.id)))) : new Set();
  const found = [];
  const area = (await ends(page, found)).filter(({ id }) => !behind.has(id));
  problems.push(...found.filter((text) => !behind.has(text.split(' ')[0])));
  if (area.length > 0 && area[0].clip[3] < height * k_view_share) problems.push(`only ${area[0].clip[3]} px to read in`);
  if (!dialog) problems.push(...(await rowsWithInkAtTheRim(page)).slice(0, 3).map((y) => `something is drawn at the rim, scrolled, row ${y}`));
  await press(page, 'Home');
  return problems;
}
