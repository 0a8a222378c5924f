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

// An address, and what was done to it: told() takes the addresses it was given since, again() how often it was loaded.
function standIn(hash = '') {
  const done = { replaced: [], reloads: 0 };
  globalThis.history = { state: null, replaceState: (_, __, to) => done.replaced.push(to) };
  globalThis.location = { hash, pathname: '/a/', search: '?seed=1', reload: () => { done.reloads += 1; } };
  globalThis.addEventListener = (_, act) => { done.open = (next) => { location.hash = next; act(); }; };
  return done;
}

test('what an address asks for is taken once; codes are cut at 5000 letters and dropped from the address', async () => {
  const { takeAsk } = await bundled('asked.js');
  const done = standIn();
  for (const hash of ['', '#', '#x=1', '#settle', '#set=1', '#rs=R1', '#A=1', '#Kiosk', '#kiosk=1', '#kiosk#r=R1', '#%6Biosk', '#__proto__']) {
    location.hash = hash;
    assert.deepEqual(takeAsk(), ['r', ''], hash);
  }
  for (const place of ['set', 'desk', 'kiosk']) {
    location.hash = `#${place}`;
    assert.deepEqual(takeAsk(), [place, '1']);
  }
  assert.deepEqual(done.replaced, [], 'a place can be kept as a bookmark');
  for (const kind of ['r', 'a', 's', 'c']) {
    location.hash = `#${kind}=${'R'.repeat(9000)}`;
    assert.deepEqual(takeAsk(), [kind, 'R'.repeat(5000)]);
    location.hash = `#${kind}=`;
    assert.notEqual(takeAsk()[1], '', 'a link that is cut off there is told of, too');
    assert.deepEqual(done.replaced.splice(0), ['/a/?seed=1', '/a/?seed=1']);
  }
});

test('another link in the same tab is opened at once, but not over a run; a shared device stays one', async () => {
  const { listenForLinks } = await bundled('asked.js');
  let busy = false;
  const own = standIn('#desk');
  listenForLinks(() => busy);
  own.open('#settle');
  assert.equal(own.reloads, 0, 'no link of ours');
  own.open('#r=R1');
  assert.equal(own.reloads, 1);
  busy = true;
  own.open('#r=R2');
  assert.deepEqual([own.reloads, own.replaced], [1, []]);
  busy = false;
  const shared = standIn('#kiosk');
  listenForLinks(() => busy);
  for (const hash of ['#r=R1', '#set', '#settle', '']) {
    shared.open(hash);
    assert.deepEqual([shared.reloads, shared.replaced.pop()], [0, '/a/?seed=1#kiosk'], hash);
  }
});
