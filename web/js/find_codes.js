// Finds QR codes in a picture or in what a camera shows: by the browser's own reader where there is one, else by
// qr_search.js, which sees one code at a time and so is shown parts of the picture, what it found painted over.
// Must not know what a code says.

import { regionsOf } from './busy_regions.js';

const WHOLE_PX = [700, 1300];  // the whole picture's longer side: first so large, then so
const REGIONS_PX = 1000;       // and so large to see where codes may lie
const REGION_PX = [600, 400];  // these are drawn so large, turned by so much
const TURNS = [0, 1, 2, 3].map((n) => (n * Math.PI) / 8);
const PART_PX = 900;           // squares of a half and a third of it are drawn so large at most
const PARTS = [2, 3];
const LEAST_PART_PX = 600;     // of the picture: no smaller squares
const LEAST_WHOLE_PX = 600;    // smaller pictures are drawn twice as large as well
const FRAME_PX = 640;          // what a camera shows, and the square in its middle: some 50 ms
const LOOKS = 4;
const MOST_CODES = 200;        // in one picture
const MOST_AGAIN = 3;
const MARGIN = 1.08;           // painted over: the code and a little around it

let own;  // a promise of the browser's own reader, once asked for

async function makeOwn() {
  try {
    const { BarcodeDetector } = globalThis;
    if ((await BarcodeDetector.getSupportedFormats()).includes('qr_code')) return new BarcodeDetector({ formats: ['qr_code'] });
  } catch { /* there is none */ }
  return undefined;
}

const searcher = async () => (await import('./qr_search.js')).searchPixels;

// Codes are told one a line. Each once.
function oneLineEach(texts) {
  const lines = texts.map((text) => text.replace(/[\x00-\x1f\x7f\u2028\u2029]+/g, ' ').trim());
  return [...new Set(lines)].filter((line) => line !== '');
}

// undefined: the browser has no reader, or one that does not work.
async function readByOwn(picture) {
  own ??= makeOwn();
  const reader = await own;
  try {
    return reader && oneLineEach((await reader.detect(picture)).map((code) => code.rawValue));
  } catch (error) {
    console.warn('the reader of this browser does not work:', String(error));
    own = Promise.resolve(undefined);
    return undefined;
  }
}

// A canvas that parts of a picture are drawn on, to be looked at as pixels.
class Board {
  constructor() {
    this.canvas = document.createElement('canvas');
    this.context = this.canvas.getContext('2d', { willReadFrequently: true });
  }

  // part: {x, y, width, height} of the picture, {scale, turn (radians)}; done: corners of codes found, painted over.
  draw(picture, { x, y, width, height, scale, turn = 0 }, done = []) {
    const { canvas, context } = this;
    canvas.width = Math.max(1, Math.round(width * scale));
    canvas.height = Math.max(1, Math.round(height * scale));
    context.fillStyle = '#fff';  // behind what is seen through
    context.fillRect(0, 0, canvas.width, canvas.height);
    context.imageSmoothingQuality = 'high';
    context.translate(canvas.width / 2, canvas.height / 2);
    context.rotate(turn);
    context.scale(scale, scale);
    context.translate(-x - width / 2, -y - height / 2);
    context.drawImage(picture, x, y, width, height, x, y, width, height);
    for (const corners of done) {
      context.beginPath();
      for (const corner of corners) context.lineTo(corner.x, corner.y);
      context.fill();
    }
    return context.getImageData(0, 0, canvas.width, canvas.height);
  }

  // Corners as found on the board -> in the picture, a little outwards.
  inPicture(corners) {
    const back = this.context.getTransform().inverse();
    const middle = { x: corners.reduce((sum, { x }) => sum + x, 0) / 4, y: corners.reduce((sum, { y }) => sum + y, 0) / 4 };
    const outwards = (at, from) => from + (at - from) * MARGIN;
    return corners.map(({ x, y }) => back.transformPoint({ x: outwards(x, middle.x), y: outwards(y, middle.y) }));
  }

  clear() { this.canvas.width = this.canvas.height = 0; }
}

// Where more codes may lie, with a little around it: {x, y, width, height} of the picture.
function regionsIn({ picture, board, done }) {
  const { width, height } = picture, scale = Math.min(1, REGIONS_PX / Math.max(width, height));
  return regionsOf(board.draw(picture, { x: 0, y: 0, width, height, scale }, done)).map((region) => {
    const around = 0.15 * Math.max(region.width, region.height);
    const x = Math.max(0, (region.x - around) / scale), y = Math.max(0, (region.y - around) / scale);
    return { x, y, width: Math.min(width - x, (region.width + 2 * around) / scale), height: Math.min(height - y, (region.height + 2 * around) / scale) };
  });
}

// What is shown to the searcher without looking, coarse to fine: levels of parts {x, y, width, height, scale}.
export function levelsOf(width, height) {
  const long = Math.max(width, height);
  const whole = (scale) => [{ x: 0, y: 0, width, height, scale }];
  const levels = [whole(Math.min(1, WHOLE_PX[0] / long))];
  if (long > WHOLE_PX[0]) levels.push(whole(Math.min(1, WHOLE_PX[1] / long)));
  if (long < LEAST_WHOLE_PX) levels.push(whole(2));
  for (const side of PARTS.map((count) => Math.ceil(long / count)).filter((px) => px >= LEAST_PART_PX)) {
    const part = (x, y) => ({ x, y, width: Math.min(side, width - x), height: Math.min(side, height - y), scale: Math.min(1, PART_PX / side) });
    levels.push(startsOf(height, side).flatMap((y) => startsOf(width, side).map((x) => part(x, y))));
  }
  return levels;
}

// Where squares begin that overlap by half; the last one ends with the picture.
function startsOf(length, side) {
  const steps = Math.max(0, Math.ceil((length - side) / (side / 2)));
  return Array.from({ length: steps + 1 }, (_, n) => (steps === 0 ? 0 : Math.round((n * (length - side)) / steps)));
}

const breathe = () => new Promise((done) => { setTimeout(done); });

// New codes of a part; what is found is added to `done`. One that comes again was not painted over well: then no more.
async function searchPart({ picture, search, board, done, texts }, part) {
  for (let again = 0; again < MOST_AGAIN && done.length < MOST_CODES;) {
    const found = search(board.draw(picture, part, done));
    await breathe();
    if (!found) return;
    if (texts.has(found.text)) again += 1;
    texts.add(found.text);
    done.push(board.inPicture(found.corners));
  }
}

// Turned and at two sizes, until one is found: the searcher wants codes about upright. False: none is.
async function searchRegion(work, region) {
  const before = work.texts.size;
  for (const px of REGION_PX) {
    const scale = Math.min(2, px / Math.max(region.width, region.height));
    for (const turn of TURNS) {
      await searchPart(work, { ...region, scale, turn });
      if (work.texts.size > before) return true;
    }
  }
  return false;
}

// Over once something was found and nothing is left that looks like a code, or looking closer adds nothing.
async function searchAll(picture, search) {
  const work = { picture, search, board: new Board(), done: [], texts: new Set() };
  const levels = levelsOf(picture.width, picture.height);
  for (const [part] of levels.filter((level) => level.length === 1)) await searchPart(work, part);
  let left = 0;
  for (const region of regionsIn(work)) if (!await searchRegion(work, region)) left += 1;
  for (const level of levels.filter((parts) => parts.length > 1)) {
    const before = work.texts.size;
    if (before > 0 && left === 0) break;
    for (const part of level) await searchPart(work, part);
    if (before > 0 && work.texts.size === before) break;
  }
  work.board.clear();
  return [...work.texts];
}

// Texts of all codes that are found in an ImageBitmap. Rejects when the part that searches does not arrive.
export async function textsIn(picture) {
  const texts = await readByOwn(picture);
  return texts?.length > 0 ? texts : oneLineEach(await searchAll(picture, await searcher()));
}

// Looks at a <video> again and again; nothing of it is kept.
export class Watcher {
  constructor(video) { Object.assign(this, { video, turn: 0, board: new Board() }); }

  // Before the camera goes on. Rejects when the part that searches does not arrive.
  async prepare() {
    own ??= makeOwn();
    if (!await own) this.search = await searcher();
  }

  // Texts in what is seen now.
  async look() {
    if (this.video.readyState < HTMLMediaElement.HAVE_CURRENT_DATA || this.video.videoWidth === 0) return [];
    const texts = await readByOwn(this.video);
    if (texts) return texts;
    this.search ??= await searcher();
    const found = this.search(this.board.draw(this.video, this.nextPart()));
    return found ? oneLineEach([found.text]) : [];
  }

  // One after another all of it and the square in its middle, upright and a little turned.
  nextPart() {
    const { videoWidth: width, videoHeight: height } = this.video;
    const side = Math.min(width, height), n = this.turn;
    this.turn = (n + 1) % LOOKS;
    const turn = n < 2 ? 0 : TURNS[1] * (n === 2 ? 1 : -1);
    if (n % 2 === 0) return { x: 0, y: 0, width, height, scale: Math.min(1, FRAME_PX / Math.max(width, height)), turn };
    return { x: (width - side) / 2, y: (height - side) / 2, width: side, height: side, scale: Math.min(1, FRAME_PX / side), turn };
  }

  end() { this.board.clear(); }
}
