// The four families' drawings: every pose that content may ask for is there, and each keeps to the look.
import assert from 'node:assert/strict';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { compile_family, families_of, k_most_bytes } from '../../ci/lib/scene.mjs';

const assets = fileURLToPath(new URL('../../assets', import.meta.url));
const words = (text) => text.trim().split(/\s+/);

// Asked for by the task that ordered the drawings.
const k_all = words(`rest open in-hand at-lips lips-open-gap blow-into breathe-out-away breathe-in-slow breathe-in-fast
  hold-breath upright tilted level upside-down shaken counter-plenty counter-low counter-zero washed wiped rinse`);
const k_own = {
  spray: words('cap-on cap-off press press-before-breath press-with-breath fingers-right fingers-wrong spray-in-air can-out can-wet'),
  'powder-lever': words('lever-start lever-moved lever-half on-edge cover-closed cover-open lever-twice'),
  'powder-cover': words('cover-closed cover-half cover-open closed-again vents-clear vents-covered'),
  'soft-mist': words('cap-shut base-turned cap-open button-pressed vents-clear vents-covered toward-throat prime-to-ground turned-with-cap-open'),
};
// Words that give an answer away or scold.
const k_no = /\b(right|correct|properly|fail|wrong|bad|incorrect|score|test|patient|just|simply|error|mistake)\b/i;

// Shapes that show in a pose, over the pose of rest.
function shown(family, name) {
  const hidden = new Map();
  for (const pose of [family.poses.get(family.start), family.poses.get(name)]) {
    for (const change of pose.changes) if (change.hide !== undefined) hidden.set(change.part, change.hide);
  }
  const shapes = [];
  let off = 0;
  for (const item of family.drawing.items) {
    if (item.open) off += off || (hidden.get(item.open.index) ?? item.open.hidden) ? 1 : 0;
    else if (item.close) off -= off ? 1 : 0;
    else if (!off) shapes.push(item.shape);
  }
  return shapes;
}

test('all four families are drawn', () => {
  assert.deepEqual(families_of(assets), Object.keys(k_own).sort());
});

for (const [name, own] of Object.entries(k_own)) {
  const family = compile_family(assets, name);

  test(`${name} has every pose that is needed`, () => {
    const missing = [...k_all, ...own].filter((pose) => !family.poses.has(pose));
    assert.deepEqual(missing, []);
  });

  test(`${name} is at most ${k_most_bytes} bytes compiled`, () => {
    assert.ok(Buffer.byteLength(family.text) <= k_most_bytes, `${Buffer.byteLength(family.text)} bytes`);
  });

  test(`${name} says what each pose shows in short neutral words`, () => {
    for (const [pose, { shows }] of family.poses) {
      assert.doesNotMatch(shows, k_no, pose);
      for (const sentence of shows.split(/(?<=\.)\s/)) assert.ok(words(sentence).length <= 15, `${pose}: ${sentence}`);
    }
  });

  test(`${name} uses at most four fills a pose`, () => {
    for (const pose of family.poses.keys()) {
      const fills = new Set(shown(family, pose).map((shape) => (shape.fill === 'shade' ? 'body' : shape.fill)));
      for (const mark of ['none', 'paper', 'ink', 'soft']) fills.delete(mark);  // ground, and marks of ink
      assert.ok(fills.size <= 4, `${pose}: ${[...fills]}`);
    }
  });

  test(`${name} outlines every large fill, so that it reads in black and white`, () => {
    const large = (shape) => new Set(shape.points.map(([x]) => x)).size > 2
      && Math.max(...shape.points.map((p) => p[0])) - Math.min(...shape.points.map((p) => p[0])) > 120;
    for (const item of family.drawing.items) {
      if (item.shape && large(item.shape) && item.shape.fill !== 'none') assert.equal(item.shape.stroke, 'ink');
    }
  });

  test(`${name} shows a picture of its own in each pose`, () => {
    const looks = new Map();
    for (const [pose, { frame, changes }] of family.poses) {
      const look = JSON.stringify([frame, changes]);
      looks.set(look, [...(looks.get(look) ?? []), pose]);
    }
    // "open" is the family's own word for it too: cap-off, cap-open, cover-open
    for (const twins of looks.values()) assert.ok(twins.filter((pose) => pose !== 'open').length <= 1, `${twins}`);
  });
}
