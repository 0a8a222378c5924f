// What is really on the picture: edges of controls as found in a screenshot, held against the mirror's boxes; the
// ground's colour.
import { waitForIdle } from './browser.mjs';

const k_reach_px = 4;   // looked at on both sides of an edge; nothing else is drawn so near to one
const k_fade_px = 40;   // near the ends of a scroll area what is drawn fades out
const readers = new WeakMap();  // a page that reads pictures, for each browser

// In a window of its own: a second page in the app's window would put the app into the background. Where there can
// be no such window, the page says so and reads its own picture.
async function readerFor(page) {
  if (page.readsItself) return page;
  const browser = page.context().browser();
  if (!readers.has(browser)) readers.set(browser, browser.newContext().then((context) => context.newPage()));
  return readers.get(browser);
}

// Boxes of what can be pressed, with the part of the page that shows them. What is drawn without an edge of its own
// is left out: the body of an ordering card, what opens and shuts, underlined words that are pressed like a button, and
// buttons that cannot be pressed now.
function boxesInMirror() {
  const clips = new Map(window.rehale.probe({ rects: true }).rects.map(({ id, clip }) => [id, clip]));
  const wanted = '#mirror :is(button, input[type=radio], input[type=checkbox]):not([aria-disabled], [aria-expanded])';
  return [...document.querySelectorAll(wanted)].filter((element) => !element.closest('[inert]'))
    .filter((element) => !/^(Pick up|Put it here|Put down|See where the medicine goes|Clear all results|For educators|Counter and care|For staff|Para el personal)/.test(element.textContent))
    .map((element) => {
      const { left, top, right, bottom } = element.getBoundingClientRect();
      const [x, y, w, h] = clips.get(element.dataset.id) ?? [0, 0, 0, 0];
      const view = w > 0 ? [x, y, x + w, y + h] : [0, 0, innerWidth, innerHeight];
      return { name: element.ariaLabel ?? element.textContent, box: [left, top, right, bottom], view, scrolls: w > 0 };
    });
}

// In the page that reads the picture: for each side of each box, how far from it the colour first changes.
async function edgesInPicture({ png, boxes, reach, fade }) {
  const bytes = Uint8Array.from(atob(png), (letter) => letter.charCodeAt(0));
  const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
  const context = new OffscreenCanvas(image.width, image.height).getContext('2d');
  context.drawImage(image, 0, 0);
  const { data } = context.getImageData(0, 0, image.width, image.height);
  const colour = (x, y) => data.subarray((y * image.width + x) * 4, (y * image.width + x) * 4 + 3);
  const differs = (a, b) => a.reduce((sum, part, n) => sum + Math.abs(part - b[n]), 0) > 24;
  const change = (x, y, dx, dy) => {  // from outside inwards
    const outside = colour(x - dx * reach, y - dy * reach);
    for (let n = -reach + 1; n <= reach; n += 1) if (differs(colour(x + dx * n, y + dy * n), outside)) return n;
    return undefined;
  };
  return boxes.flatMap(({ name, box, view, scrolls }) => {
    const [left, top, right, bottom] = box.map(Math.round);
    const [x, y] = [Math.round((left + right) / 2), Math.round((top + bottom) / 2)];
    const sides = [[left, y, 1, 0], [right - 1, y, -1, 0], [x, top, 0, 1], [x, bottom - 1, 0, -1]];
    const inset = scrolls ? fade : reach + 1;
    return sides.filter(([px, py]) => px > reach && px < image.width - reach && py > view[1] + inset && py < view[3] - inset)
      .map(([px, py, dx, dy]) => ({ name, side: `${px},${py}`, off: change(px, py, dx, dy) }));
  });
}

// How many edges were found in the picture, and those further than `most` px from the mirror's box.
export async function strayEdges(page, most = 2) {
  const boxes = await page.evaluate(boxesInMirror);
  const png = (await page.screenshot({ animations: 'allow', caret: 'initial' })).toString('base64');
  const reader = await readerFor(page);
  const edges = await reader.evaluate(edgesInPicture, { png, boxes, reach: k_reach_px, fade: k_fade_px });
  const far = edges.filter(({ off }) => off === undefined || Math.abs(off) > most);
  return { seen: edges.length, stray: far.map(({ name, side, off }) => `'${name}' at ${side}: ${off ?? 'no edge'}`) };
}

// The colour of the page's ground, as the compositor shows it.
export async function ground(page) {
  await waitForIdle(page);
  const png = (await page.screenshot({ clip: { x: 2, y: 2, width: 1, height: 1 } })).toString('base64');
  return page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    const context = new OffscreenCanvas(1, 1).getContext('2d');
    context.drawImage(await createImageBitmap(new Blob([bytes], { type: 'image/png' })), 0, 0);
    return [...context.getImageData(0, 0, 1, 1).data].slice(0, 3).map((level) => level.toString(16).padStart(2, '0')).join('');
  }, png);
}
