// Contrast of words as they are on screen: in the picture of each heading, paragraph, list item and control (where its
// words are), the most frequent colour is the ground and the one that stands out most from it the ink. Formula: WCAG
// 2.2, "relative luminance" and "contrast ratio".
import { probe } from './browser.mjs';

const k_roles = ['heading', 'paragraph', 'list_item', 'button', 'radio', 'checkbox'];
const k_fade_px = 44;    // near the ends of a scroll area what is drawn fades out
const k_least_dots = 3;  // so many pixels of a colour: not a stray one
const readers = new WeakMap();

async function readerFor(page) {
  const browser = page.context().browser();
  if (!readers.has(browser)) readers.set(browser, browser.newContext().then((context) => context.newPage()));
  return readers.get(browser);
}

// Wholly in view, away from the ends, and not behind a dialog.
async function boxesInView(page) {
  const { rects } = await probe(page, { rects: true });
  const { width, height } = page.viewportSize();
  const idsOf = (selector) => page.locator(selector).evaluateAll((all) => all.map((each) => each.dataset.id));
  // Signs without words that cannot be pressed now may be faint: 1.4.3 and 1.4.11 leave inactive ones out.
  const idle = (await idsOf('#mirror button[aria-disabled]')).filter((id) => /\/(up|down|less|more)$/.test(id));
  const covered = new Set([...idle, ...await idsOf('#mirror [inert], #mirror [inert] [data-id]')]);
  return rects.filter(({ id, role, name, rect: [x, y, w, h], clip }) => {
    if (!k_roles.includes(role) || !name || covered.has(id) || w < 4 || h < 4) return false;
    const [top, bottom] = clip?.[2] > 0 ? [clip[1] + (y > clip[1] + k_fade_px ? 0 : 1), clip[1] + clip[3] - k_fade_px] : [0, height];
    return x >= 0 && x + w <= width && y >= top && y + h <= bottom;
  }).map((each) => ({ id: each.id, role: each.role, ...wordsOf(each) }));
}

// Where a control has its words and nothing else: not its edge and corners, nor its spot or picture. As web/kit draws
// them on a phone: choices.cpp, card_grid.cpp (picture on the left), picture_choices.cpp (words below: their last line,
// or, where a neighbour has one more, the line above).
function wordsOf({ role, rect: [x, y, w, h] }) {
  if (['heading', 'paragraph'].includes(role) || w < 80) return { rect: [x, y, w, h] };
  const tall = h > 120, isChoice = role === 'radio' || role === 'checkbox';
  if (isChoice && tall) return { rect: [x + 16, y + h - 44, w - 32, 34], or: [x + 16, y + h - 71, w - 32, 34] };
  const left = isChoice ? 52 : role === 'button' && tall && w > 250 ? 132 : 16;
  return { rect: [x + left, y + 5, w - left - 16, h - 10] };
}

async function measure({ png, boxes, least }) {
  const bytes = Uint8Array.from(atob(png), (letter) => letter.charCodeAt(0));
  const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
  const context = new OffscreenCanvas(image.width, image.height).getContext('2d');
  context.drawImage(image, 0, 0);
  const linear = (level) => (level / 255 <= 0.04045 ? level / 255 / 12.92 : ((level / 255 + 0.055) / 1.055) ** 2.4);
  const luminance = (colour) => 0.2126 * linear(colour >> 16) + 0.7152 * linear((colour >> 8) & 255) + 0.0722 * linear(colour & 255);
  const ratioIn = (rect) => {
    const { data } = context.getImageData(...rect.map(Math.round));
    const counts = new Map();
    for (let n = 0; n < data.length; n += 4) {
      const colour = (data[n] << 16) | (data[n + 1] << 8) | data[n + 2];
      counts.set(colour, (counts.get(colour) ?? 0) + 1);
    }
    const [ground] = [...counts].sort((a, b) => b[1] - a[1])[0];
    const base = luminance(ground);
    let ratio = 1;
    for (const [colour, count] of counts) {
      if (count < least) continue;
      const other = luminance(colour);
      ratio = Math.max(ratio, (Math.max(base, other) + 0.05) / (Math.min(base, other) + 0.05));
    }
    return ratio;
  };
  const all = boxes.map(({ id, role, rect, or }) => {
    const ratio = ratioIn(rect);
    return { id, role, ratio: ratio === 1 && or ? ratioIn(or) : ratio };
  });
  return { all, corner: context.getImageData(2, 2, 1, 1).data.slice(0, 3).join() };
}

// {all: [{id, role, ratio}] of all words in view, corner: the colour of the page's ground}.
export async function contrasts(page) {
  const boxes = await boxesInView(page);
  const png = (await page.screenshot({ scale: 'css' })).toString('base64');
  return (await readerFor(page)).evaluate(`(${measure})(${JSON.stringify({ png, boxes, least: k_least_dots })})`);
}
