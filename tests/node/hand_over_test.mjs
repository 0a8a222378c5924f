// web/js/hand_over.js as it is bundled: its QR codes read by jsqr; the address loses the code of a link.
import assert from 'node:assert/strict';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import jsQR from 'jsqr';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');

async function bundled(file) {
  const { outputFiles } = await build({
    entryPoints: [path.join(root, 'web/js', file)], bundle: true, format: 'esm', write: false,
    nodePaths: [path.join(root, 'ci/node_modules')], external: ['./later/*'], loader: { '.css': 'empty' },
  });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].text).toString('base64')}`);
}

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

test('the code of a link is taken once, cut at 5000 letters, and dropped from the address', async () => {
  const { takeCode } = await bundled('asked.js');
  const told = [];
  globalThis.history = { state: null, replaceState: (_, __, to) => told.push(to) };
  globalThis.location = { hash: '', pathname: '/a/', search: '?seed=1' };
  assert.equal(takeCode(), '');
  assert.deepEqual(told, []);
  location.hash = `#r=${'R'.repeat(9000)}`;
  assert.equal(takeCode(), `#r=${'R'.repeat(5000)}`);
  assert.deepEqual(told, ['/a/?seed=1']);
  location.hash = '#c=C1abc';
  assert.equal(takeCode(), '#c=C1abc');
  assert.equal(told.length, 2);
  location.hash = '#x=C1abc';  // not ours: left alone
  assert.equal(takeCode(), '');
  assert.equal(told.length, 2);
});
