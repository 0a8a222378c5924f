// One SVG shape element -> shapes of a compiled scene: { fill, stroke, width, closed, convex, points }.
// Must not know parts, poses or files.
import { ellipse_line, path_lines, rect_line } from './svg_path.mjs';

export const k_roles = { none: '-', paper: 'p', body: 'b', shade: 'd', act: 'a', skin: 'k', wash: 'w', air: 'r', ink: 'i', soft: 's' };
export const k_widths = [2, 3, 4, 5, 6, 8];
// In drawing units, 480 of which are a full face scene: how far a curve is from its polyline.
const k_curve = 0.08, k_thin = 0.2;

// "fill-body stroke-ink w3" -> roles. Paint comes by class only, so that a theme decides colours.
export function read_paint(classes) {
  const paint = { fill: 'none', stroke: 'none', width: 3 };
  for (const word of classes.split(/\s+/).filter(Boolean)) {
    const [, kind, role] = /^(fill|stroke)-([a-z]+)$/.exec(word) ?? [];
    const width = Number(/^w(\d+)$/.exec(word)?.[1]);
    if (kind && role in k_roles) paint[kind] = role;
    else if (k_widths.includes(width)) paint.width = width;
    else throw new Error(`class ${word} is not known; paint is fill-<role>, stroke-<role> of ${Object.keys(k_roles).join(', ')} and w${k_widths.join(', w')}`);
  }
  if (paint.fill === 'none' && paint.stroke === 'none') throw new Error('class gives neither fill nor stroke');
  return paint;
}

function number(attrs, name, fallback) {
  const text = attrs[name];
  if (text === undefined && fallback !== undefined) return fallback;
  const value = Number(text);
  if (text === undefined || text.trim() === '' || Number.isNaN(value)) throw new Error(`${name} must be a number, is ${text}`);
  return value;
}

function pairs(text) {
  const n = (text ?? '').split(/[\s,]+/).filter(Boolean).map(Number);
  if (n.length < 4 || n.length % 2 || n.some(Number.isNaN)) throw new Error('points must be two or more pairs of numbers');
  return Array.from({ length: n.length / 2 }, (_, i) => [n[2 * i], n[2 * i + 1]]);
}

export const k_shape_attributes = {
  path: ['d'], circle: ['cx', 'cy', 'r'], ellipse: ['cx', 'cy', 'rx', 'ry'], rect: ['x', 'y', 'width', 'height', 'rx'],
  line: ['x1', 'y1', 'x2', 'y2'], polyline: ['points'], polygon: ['points'],
};

function outlines(tag, attrs) {
  const n = (name, fallback) => number(attrs, name, fallback);
  switch (tag) {
    case 'path': return path_lines(attrs.d ?? '', k_curve);
    case 'circle': return [ellipse_line(n('cx'), n('cy'), n('r'), n('r'), k_curve)];
    case 'ellipse': return [ellipse_line(n('cx'), n('cy'), n('rx'), n('ry'), k_curve)];
    case 'rect': return [rect_line(n('x'), n('y'), n('width'), n('height'), n('rx', 0), k_curve)];
    case 'line': return [{ points: [[n('x1'), n('y1')], [n('x2'), n('y2')]], closed: false }];
    case 'polyline': return [{ points: pairs(attrs.points), closed: false }];
    default: return [{ points: pairs(attrs.points), closed: true }];
  }
}

const cross = (a, b, c) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

export function signed_area(points) {
  return points.reduce((sum, p, i) => {
    const q = points[(i + 1) % points.length];
    return sum + (p[0] * q[1] - q[0] * p[1]) / 2;
  }, 0);
}

// An outline that crosses itself cannot be filled by cutting ears.
export function crosses_itself(points) {
  const count = points.length;
  for (let i = 0; i < count; i++) {
    const a = points[i], b = points[(i + 1) % count];
    for (let j = i + 2; j < count; j++) {
      if (i === 0 && j === count - 1) continue;
      const c = points[j], d = points[(j + 1) % count];
      if (cross(a, b, c) * cross(a, b, d) < 0 && cross(c, d, a) * cross(c, d, b) < 0) return true;
    }
  }
  return false;
}

function is_convex(points) {
  return points.every((p, i) => cross(p, points[(i + 1) % points.length], points[(i + 2) % points.length]) >= -1);
}

function apart(p, a, b) {
  const dx = b[0] - a[0], dy = b[1] - a[1], length = Math.hypot(dx, dy);
  return length < 1e-9 ? Math.hypot(p[0] - a[0], p[1] - a[1]) : Math.abs((p[0] - a[0]) * dy - (p[1] - a[1]) * dx) / length;
}

// Fewest points that stay within k_thin of the line (Douglas and Peucker's way).
function thinned(points) {
  if (points.length < 3) return points;
  let far = 0, worst = 0;
  for (let i = 1; i + 1 < points.length; i++) {
    const d = apart(points[i], points[0], points.at(-1));
    if (d > worst) [far, worst] = [i, d];
  }
  if (worst <= k_thin) return [points[0], points.at(-1)];
  return [...thinned(points.slice(0, far + 1)), ...thinned(points.slice(far)).slice(1)];
}

function thinned_ring(points) {
  let far = 0;
  points.forEach((p, i) => {
    if (Math.hypot(p[0] - points[0][0], p[1] - points[0][1]) > Math.hypot(points[far][0] - points[0][0], points[far][1] - points[0][1])) far = i;
  });
  return [...thinned(points.slice(0, far + 1)), ...thinned([...points.slice(far), points[0]]).slice(1, -1)];
}

// Tenths of a unit; points that fall together go.
function rounded(points, closed) {
  const out = [];
  for (const [x, y] of points.map((p) => p.map((v) => Math.round(v * 10)))) {
    const last = out.at(-1);
    if (!last || last[0] !== x || last[1] !== y) out.push([x, y]);
  }
  if (closed && out.length > 1 && out[0][0] === out.at(-1)[0] && out[0][1] === out.at(-1)[1]) out.pop();
  return out;
}

// matrix: [a, b, c, d, e, f] of SVG. Throws Error with a plain detail.
export function shapes_of(tag, attrs, matrix) {
  const paint = read_paint(attrs.class ?? '');
  const lines = outlines(tag, attrs);
  if (!lines.length) throw new Error('draws nothing');
  if (paint.fill !== 'none' && (lines.length > 1 || !lines[0].closed)) throw new Error('a filled path is one closed outline, without holes');
  return lines.map((line) => {
    const [a, b, c, d, e, f] = matrix;
    const placed = line.points.map(([x, y]) => [a * x + c * y + e, b * x + d * y + f]);
    let points = rounded(line.closed ? thinned_ring(placed) : thinned(placed), line.closed);
    if (points.length < (paint.fill === 'none' ? 2 : 3)) throw new Error('is too small to be seen');
    if (paint.fill !== 'none' && crosses_itself(points)) throw new Error('a filled outline crosses itself');
    if (paint.fill !== 'none' && signed_area(points) < 0) points = points.reverse();  // clockwise on screen
    return { ...paint, closed: line.closed, convex: is_convex(points), points };
  });
}
