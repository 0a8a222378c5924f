// web/js/hand_over.js as it is bundled: its QR codes read by jsqr; the address loses the code of a link.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import jsQR from 'jsqr';
import { bundled } from '../bundled.mjs';

// Modules as pixels, `scale` a module, with the quiet zone of 4 that the screen draws.
function pictureOf(lines, scale = 3) {
  const rows = lines.split('\n');
  const side = (rows.length + 8) * scale;
  const pixels = new Uint8ClampedArray(side * side * 4).fill(255);
  for (let n = 0; n < side * side; n += 1) {
    const [x, y] = [n % side, Math.floor(n / side)].map((at) => Math.floor(at / scale) - 4);
    if (rows[y]?.[x] === '1') pixels.fill(0, n * 4, n * 4 + 3);
  }
  return jsQR(pixels, side, side);
}

test('a QR code says the text it was made from; a link of 400 letters fits version 15', async () => {
  const { qrLines } = await bundled('hand_over.js');
  for (const length of [1, 20, 150, 260, 400]) {
    const text = `https://page.invalid/#r=${'R1-aZ_09'.repeat(60)}`.slice(0, length);
    const lines = qrLines(text);
    assert.match(lines, /^[01\n]+$/);
    assert.equal(pictureOf(lines)?.data, text);
    assert.ok(lines.split('\n').length <= 17 + 4 * 15, `${length}: ${lines.split('\n').length} modules`);  // ISO/IEC 18004
  }
});

test('what an address asks for is taken once; codes are cut at 5000 letters and dropped from the address', async () => {
  const { asks, takeAsk } = await bundled('asked.js');
  const told = [];
  globalThis.history = { state: null, replaceState: (_, __, to) => told.push(to) };
  globalThis.location = { hash: '', pathname: '/a/', search: '?seed=1' };
  for (const hash of ['', '#', '#x=1', '#settle', '#set=1', '#rs=R1', '#A=1']) {
    location.hash = hash;
    assert.deepEqual([asks(), takeAsk()], [false, ['r', '']], hash);
  }
  location.hash = '#set';
  assert.deepEqual([asks(), takeAsk()], [true, ['set', '1']]);
  assert.deepEqual(told, [], 'a place can be kept as a bookmark');
  for (const kind of ['r', 'a', 's', 'c']) {
    location.hash = `#${kind}=${'R'.repeat(9000)}`;
    assert.deepEqual([asks(), takeAsk()], [true, [kind, 'R'.repeat(5000)]]);
    assert.equal(told.pop(), '/a/?seed=1');
  }
});
