// The compiler of drawings. Checked against closed forms of geometry (areas, points of Bezier curves) and
// against what it must refuse.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { compile_drawing, compile_poses, read_common, scene_text, SceneError } from '../../ci/lib/scene.mjs';
import { signed_area } from '../../ci/lib/scene_shapes.mjs';
import { ellipse_line, path_lines, rect_line } from '../../ci/lib/svg_path.mjs';

const svg = (inside) => `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 480 360">${inside}</svg>`;
const drawn = (inside, common) => compile_drawing('a/scene.svg', svg(inside), common);
const points_of = (inside) => drawn(inside).items.find((item) => item.shape).shape.points;

function near(actual, wanted, by, what) {
  assert.ok(Math.abs(actual - wanted) <= by, `${what}: ${actual}, wanted ${wanted} give or take ${by}`);
}

test('a circle has the area of a circle', () => {
  const { points } = ellipse_line(10, 20, 40, 40, 0.05);
  near(Math.abs(signed_area(points)), Math.PI * 40 * 40, Math.PI * 40 * 40 * 0.003, 'area');
  for (const [x, y] of points) near(Math.hypot(x - 10, y - 20), 40, 1e-9, 'radius');
});

test('an ellipse has the area of an ellipse', () => {
  near(Math.abs(signed_area(ellipse_line(0, 0, 50, 20, 0.05).points)), Math.PI * 50 * 20, 8, 'area');
});

test('a rounded rectangle lacks just its corners', () => {
  const area = Math.abs(signed_area(rect_line(0, 0, 60, 40, 10, 0.02).points));
  near(area, 60 * 40 - (4 - Math.PI) * 100, 1, 'area');
});

test('a cubic is cut within the tolerance', () => {
  const [{ points }] = path_lines('M0 0C0 90 100 -50 100 40', 0.1);
  for (let t = 0; t <= 1; t += 0.01) {  // points of the true curve, by Bernstein's form
    const u = 1 - t;
    const x = 3 * u * t * t * 100 + t ** 3 * 100;
    const y = 3 * u * u * t * 90 - 3 * u * t * t * 50 + t ** 3 * 40;
    near(Math.min(...points.slice(1).map((p, i) => to_segment([x, y], points[i], p))), 0, 0.1, `distance at ${t}`);
  }
});

function to_segment(p, a, b) {
  const dx = b[0] - a[0], dy = b[1] - a[1], length = dx * dx + dy * dy;
  const t = length ? Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / length)) : 0;
  return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy);
}

test('small and large letters of a path say the same', () => {
  const large = path_lines('M10 10H50V40L30 60C20 60 10 50 10 40S0 20 10 10Z', 0.1);
  const small = path_lines('m10 10h40v30l-20 20c-10 0 -20 -10 -20 -20s-10 -20 0 -30z', 0.1);
  assert.deepEqual(small, large);
  const curve = path_lines('M0 0Q10 20 20 0T40 0', 0.1), same = path_lines('m0 0q10 20 20 0t20 0', 0.1);
  assert.deepEqual(same, curve);
});

test('a half circle by the arc command passes its top', () => {
  const [{ points }] = path_lines('M0 0A10 10 0 0 1 20 0', 0.01);
  near(Math.min(...points.map((p) => p[1])), -10, 0.02, 'top');
  const [{ points: other }] = path_lines('M0 0A10 10 0 0 0 20 0', 0.01);
  near(Math.max(...other.map((p) => p[1])), 10, 0.02, 'bottom');
  near(path_lines('M0 0A5 5 0 0 1 20 0', 0.01)[0].points.reduce((least, p) => Math.min(least, p[1]), 0), -10, 0.02, 'grown radius');
});

test('static transforms are worked in, in the order SVG has them', () => {
  // scale first, then turn a quarter clockwise, then move: (10,0) -> (20,0) -> (0,20) -> (100,220)
  const points = points_of('<g transform="translate(100 200)"><line class="stroke-ink w3" transform="rotate(90) scale(2)" x1="0" y1="0" x2="10" y2="0"/></g>');
  assert.deepEqual(points, [[1000, 2000], [1000, 2200]]);
  assert.deepEqual(points_of('<line class="stroke-ink" transform="rotate(180 50 50)" x1="0" y1="0" x2="10" y2="0"/>'), [[1000, 1000], [900, 1000]]);
});

test('filled outlines run clockwise on the screen, as Dear ImGui wants them', () => {
  for (const order of ['0 0 10 0 10 10 0 10', '0 0 0 10 10 10 10 0']) {
    assert.ok(signed_area(points_of(`<polygon class="fill-body" points="${order}"/>`)) > 0);
  }
});

test('parts nest, keep their order and are told in the text', () => {
  const drawing = drawn('<g id="part-a" data-about="5 6"><g id="part-b" data-hidden="true"><circle class="fill-act stroke-ink w2" cx="0" cy="0" r="4"/></g></g>');
  const posed = compile_poses('a/poses.json', JSON.stringify({
    schema: 1, start: 'rest', poses: {
      rest: { shows: 'Rest.' },
      go: { shows: 'Go.', frame: [0, 0, 40, 30], parts: { b: { move: [1, -2.5], turn_deg: 12.3, about: [3, 4], scale: [-1, 0.5], hide: false } } },
    },
  }), drawing.parts);
  const lines = scene_text(drawing, posed).split('\n');
  assert.deepEqual(lines.slice(0, 4), ['rehale-scene 1', 'view 0 0 4800 3600', '( a 0 50 60', '( b 1 0 0']);
  assert.match(lines[4], /^s a i 2 c \d+ -?\d+ -?\d+ /);
  assert.deepEqual(lines.slice(5), [')', ')', 'start rest', 'pose rest', 'pose go 0 0 400 300',
    't 1 m 10 -25 r 123 a 30 40 z -1000 500 h 0', 'end 2 2', '']);
});

test('a shared figure is put where it is used', () => {
  const common = read_common('scene-common.svg', svg('<g id="mark"><line class="stroke-ink w3" x1="0" y1="0" x2="2" y2="0"/></g>'));
  const { items } = drawn('<use href="../../scene-common.svg#mark" x="7" y="8"/>', common);
  assert.deepEqual(items[0].shape.points, [[70, 80], [90, 80]]);
});

const k_refused = {
  'an element it does not know': ['<text class="fill-ink">a</text>', /<text> \(line 1\)|inside <text>/],
  'an attribute it does not know': ['<path id="x" class="fill-ink" style="fill:red" d="M0 0L5 0L5 5Z"/>', /<path id="x">.*style/],
  'paint that is no role': ['<circle class="fill-red" cx="0" cy="0" r="3"/>', /fill-red is not known/],
  'no paint': ['<circle cx="0" cy="0" r="3"/>', /neither fill nor stroke/],
  'a hole': ['<path class="fill-body" d="M0 0H9V9H0ZM3 3H6V6H3Z"/>', /without holes/],
  'an outline that crosses itself': ['<path class="fill-body" d="M0 0L10 10H0L10 0Z"/>', /crosses itself/],
  'a path command it does not know': ['<path class="stroke-ink" d="M0 0R5 5"/>', /not known/],
  'too few numbers': ['<path class="stroke-ink" d="M0 0L5"/>', /wants 2 numbers/],
  'a part with a transform': ['<g id="part-a" transform="scale(2)"></g>', /part-a.*no transform/],
  'a part in a moved group': ['<g transform="scale(2)"><g id="part-a"></g></g>', /part-a.*no transform/],
  'a part that is there twice': ['<g id="part-a"></g><g id="part-a"></g>', /part a is there twice/],
  'hiding what is no part': ['<g data-hidden="true"></g>', /only a group with id/],
  'a figure that is not there': ['<use href="../../scene-common.svg#no"/>', /#no/],
  'a figure from elsewhere': ['<use href="other.svg#mark"/>', /other\.svg/],
  'a number that is none': ['<circle class="fill-ink" cx="a" cy="0" r="3"/>', /cx must be a number/],
  'words': ['<g>hello</g>', /hello/],
  'a tag left open': ['<g>', /closes <g>|never closed/],
};

for (const [what, [inside, message]] of Object.entries(k_refused)) {
  test(`refuses ${what}, with file and place`, () => {
    assert.throws(() => drawn(inside), (error) => error instanceof SceneError && error.message.startsWith('a/scene.svg: ') && message.test(error.message));
  });
}

const k_refused_poses = {
  'a part that is not drawn': [{ rest: { shows: 'A.', parts: { wing: { hide: true } } } }, /\/poses\/rest.*wing/],
  'a change it does not know': [{ rest: { shows: 'A.', parts: { a: { colour: 1 } } } }, /colour/],
  'a move that is no pair': [{ rest: { shows: 'A.', parts: { a: { move: [1] } } } }, /move must be 2 numbers/],
  'no words': [{ rest: { parts: {} } }, /shows/],
  'a start that is no pose': [{ other: { shows: 'A.' } }, /\/start/],
};

for (const [what, [poses, message]] of Object.entries(k_refused_poses)) {
  test(`refuses poses with ${what}`, () => {
    const { parts } = drawn('<g id="part-a"></g>');
    assert.throws(() => compile_poses('a/poses.json', JSON.stringify({ schema: 1, start: 'rest', poses }), parts), message);
  });
}

test('poses that are no JSON are refused by file', () => {
  assert.throws(() => compile_poses('a/poses.json', '{', new Map()), /a\/poses\.json: whole file/);
});
