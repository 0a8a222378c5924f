// Sizes of pictures from their first bytes (web/js/picture_size.js), and where in a picture codes are looked for
// (web/js/find_codes.js, busy_regions.js). Files are written here by the standards' layouts, and by hand cut or spoilt.
import './support/browser_globals.mjs';
import assert from 'node:assert/strict';
import { test } from 'node:test';
import qrcode from 'qrcode-generator';
import { regionsOf } from '../../web/js/busy_regions.js';
import { isPicture, pictureSize } from '../../web/js/picture_size.js';
import { bundled } from '../bundled.mjs';

const file = (bytes, type = '') => new File([Uint8Array.from(bytes)], 'x', { type });
const be = (number, bytes) => Array.from({ length: bytes }, (_, n) => (number >>> (8 * (bytes - 1 - n))) & 255);
const ascii = (text) => [...text].map((letter) => letter.charCodeAt(0));

const png = (width, height) => [0x89, ...ascii('PNG\r\n\x1a\n'), ...be(13, 4), ...ascii('IHDR'), ...be(width, 4), ...be(height, 4), 8, 2, 0, 0, 0];
const segment = (marker, body) => [0xff, marker, ...be(body.length + 2, 2), ...body];
const jpeg = (width, height, frame, before = []) => [0xff, 0xd8, ...segment(0xe0, ascii('JFIF\0')), ...before,
  ...segment(frame, [8, ...be(height, 2), ...be(width, 2), 3, 1, 0x22, 0, 2, 0x11, 1, 3, 0x11, 1]), 0xff, 0xda];

test('a PNG says its size', async () => {
  for (const [width, height] of [[1, 1], [640, 480], [70_000, 3]]) assert.deepEqual(await pictureSize(file(png(width, height))), { width, height });
});

test('a JPEG says its size, of every kind of frame, behind other segments', async () => {
  const small = jpeg(160, 120, 0xc0);  // as cameras put it into what stands before
  for (const frame of [0xc0, 0xc1, 0xc2, 0xc9]) {
    for (const before of [[], segment(0xe1, small), segment(0xc4, [1, 2, 3]), [0xff, 0xff, 0xff], Array.from({ length: 20 }, () => segment(0xe2, new Array(60_000).fill(7))).flat()]) {
      assert.deepEqual(await pictureSize(file(jpeg(4032, 3024, frame, before))), { width: 4032, height: 3024 }, `${frame}`);
    }
  }
});

test('what is cut, empty or something else has no size', async () => {
  const whole = { png: png(5, 5), jpeg: jpeg(5, 5, 0xc0) };
  for (const cut of [0, 1, 4, 9, 18]) {
    for (const bytes of Object.values(whole)) assert.equal(await pictureSize(file(bytes.slice(0, cut))), undefined, `${cut}`);
  }
  for (const bytes of [png(0, 5), png(5, 0), jpeg(0, 5, 0xc0), ascii('GIF89a\x05\0\x05\0'), ascii('<svg/>'), jpeg(5, 5, 0xc4), [0xff, 0xd8, 0xff, 0xe0, 0, 0]]) {
    assert.equal(await pictureSize(file(bytes)), undefined);
  }
});

test('pictures are told from lists of codes by type or first bytes', async () => {
  assert.ok(await isPicture(file(png(5, 5))));
  assert.ok(await isPicture(file(jpeg(5, 5, 0xc0))));
  assert.ok(await isPicture(file([1, 2, 3], 'image/heic')));
  for (const text of ['', 'R1abc', '{"kind":"rehale-run"}', 'PNG']) assert.ok(!await isPicture(file(ascii(text), 'text/plain')), text);
});

const { levelsOf } = await bundled('find_codes.js');

test('a picture is searched as a whole at two sizes, and so that every small square lies whole in some part', () => {
  for (const [width, height] of [[4032, 3024], [3024, 4032], [7728, 5152], [1800, 1300], [9000, 900]]) {
    const levels = levelsOf(width, height);
    assert.equal(new Set(levels.filter(([part]) => part.width === width && part.height === height).map(([part]) => part.scale)).size, 2, `${width}`);
    const side = Math.max(width, height) / 6;  // half of the smallest parts' side
    for (let n = 0; n < 500; n += 1) {
      const [x, y] = [(width - side) * ((n * 0.618) % 1), Math.max(0, height - side) * ((n * 0.414) % 1)];
      const holds = (part) => part.x <= x && part.y <= y && part.x + part.width >= x + side && part.y + part.height >= Math.min(height, y + side);
      assert.ok(levels.at(-1).some(holds), `${width} x ${height}: ${x}, ${y}`);
    }
    for (const part of levels.flat()) {
      assert.ok(part.x >= 0 && part.y >= 0 && part.x + part.width <= width && part.y + part.height <= height);
      assert.ok(part.width * part.height * part.scale ** 2 <= 1300 * 1300 + 1, 'bounded in pixels');
    }
  }
});

test('small pictures are drawn larger, never in parts', () => {
  assert.deepEqual(levelsOf(300, 200).map(([part]) => part.scale), [1, 2]);
  assert.deepEqual(levelsOf(640, 400).map((level) => level.length), [1]);
});

const k_width = 1000, k_height = 700;

// Grey pixels: dark(x, y) says where it is black.
function pixels(dark) {
  const data = new Uint8ClampedArray(4 * k_width * k_height).fill(255);
  for (let n = 0; n < k_width * k_height; n += 1) data.fill(dark(n % k_width, Math.floor(n / k_width)) ? 20 : 220, 4 * n, 4 * n + 3);
  return { data, width: k_width, height: k_height };
}

function codeAt(left, top, px, text) {
  const code = qrcode(0, 'M');
  code.addData(text, 'Byte');
  code.make();
  const side = code.getModuleCount() * px;
  const holds = (x, y) => x >= left && y >= top && x < left + side && y < top + side;
  return { left, top, side, dark: (x, y) => holds(x, y) && code.isDark(Math.floor((y - top) / px), Math.floor((x - left) / px)) };
}

test('codes beside each other are seen apart, each whole; lines of text and plain ground are not', () => {
  const codes = [codeAt(30, 40, 2, 'a'.repeat(180)), codeAt(230, 40, 3, 'b'.repeat(200)), codeAt(520, 30, 5, 'c'.repeat(150)), codeAt(60, 430, 6, 'short')];
  const text = (x, y) => y > 640 && y < 654 && x > 40 && x % 9 < 4;
  const found = regionsOf(pixels((x, y) => text(x, y) || codes.some((code) => code.dark(x, y))));
  assert.equal(found.length, codes.length, JSON.stringify(found));
  for (const { left, top, side } of codes) {
    const near = found.filter(({ x, y, width, height }) => Math.abs(x - left) <= 4 && Math.abs(y - top) <= 4 && Math.abs(x + width - left - side) <= 4 && Math.abs(y + height - top - side) <= 4);
    assert.equal(near.length, 1, `${left}, ${top}, ${side}: ${JSON.stringify(found)}`);
  }
});

test('noise all over, or nothing, gives at most one region', () => {
  assert.deepEqual(regionsOf(pixels(() => false)), []);
  assert.ok(regionsOf(pixels((x, y) => (x * 7919 + y * 104729 + ((x * y) % 31)) % 5 < 2)).length <= 1);
  assert.deepEqual(regionsOf({ data: new Uint8ClampedArray(4 * 9), width: 3, height: 3 }), []);
});
