// Geometry of SVG shapes as polylines: [{ points: [[x, y], ...], closed }]. Curves are cut until they
// lie within a tolerance of the true curve. Must not know files, classes or parts.

const k_arity = { m: 2, l: 2, h: 1, v: 1, c: 6, s: 4, q: 4, t: 2, a: 7, z: 0 };

function path_commands(d) {
  const tokens = d.match(/[a-zA-Z]|[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?|[^\s,]/g) ?? [];
  const commands = [];
  let name = null;
  for (let i = 0; i < tokens.length;) {
    if (/^[a-zA-Z]$/.test(tokens[i])) name = tokens[i++];
    const arity = name === null ? undefined : k_arity[name.toLowerCase()];
    if (arity === undefined) throw new Error(`path command ${tokens[i] ?? name} is not known`);
    const values = tokens.slice(i, i + arity).map(Number);
    if (values.length < arity || values.some(Number.isNaN)) throw new Error(`path command ${name} wants ${arity} numbers`);
    i += arity;
    commands.push([name, values]);
    if (arity === 0 && i < tokens.length && !/^[a-zA-Z]$/.test(tokens[i])) throw new Error(`number after ${name}`);
    if (name === 'm') name = 'l';
    if (name === 'M') name = 'L';
  }
  if (commands.length && commands[0][0].toLowerCase() !== 'm') throw new Error('a path starts with M');
  return commands;
}

// How far control points lie from the chord bounds how far the curve does.
function cut_cubic(out, curve, tolerance, depth = 0) {
  const [p0, p1, p2, p3] = curve;
  const dx = p3[0] - p0[0], dy = p3[1] - p0[1];
  const chord = Math.hypot(dx, dy);
  const off = (p) => (chord > 1e-9 ? Math.abs((p[0] - p0[0]) * dy - (p[1] - p0[1]) * dx) / chord
    : Math.hypot(p[0] - p0[0], p[1] - p0[1]));
  if (depth > 12 || (depth > 0 && Math.max(off(p1), off(p2)) <= tolerance * 4 / 3)) {
    out.push(p3);
    return;
  }
  const mid = (a, b) => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const a = mid(p0, p1), b = mid(p1, p2), c = mid(p2, p3), ab = mid(a, b), bc = mid(b, c), m = mid(ab, bc);
  cut_cubic(out, [p0, a, ab, m], tolerance, depth + 1);
  cut_cubic(out, [m, bc, c, p3], tolerance, depth + 1);
}

function signed_angle(ux, uy, vx, vy) {
  return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}

// Centre form of an elliptical arc: SVG 1.1, appendix F.6.5 and F.6.6.
function cut_arc(out, from, [rx0, ry0, turn_deg, large, sweep, x, y], tolerance) {
  let rx = Math.abs(rx0), ry = Math.abs(ry0);
  if (rx === 0 || ry === 0) { out.push([x, y]); return; }
  const phi = turn_deg * Math.PI / 180, cos = Math.cos(phi), sin = Math.sin(phi);
  const hx = (from[0] - x) / 2, hy = (from[1] - y) / 2;
  const px = cos * hx + sin * hy, py = -sin * hx + cos * hy;
  const grow = Math.sqrt(px * px / (rx * rx) + py * py / (ry * ry));
  if (grow > 1) { rx *= grow; ry *= grow; }
  const k = Math.sqrt(Math.max(0, (rx * rx * ry * ry) / (rx * rx * py * py + ry * ry * px * px) - 1)) * (large === sweep ? -1 : 1);
  const qx = k * rx * py / ry, qy = -k * ry * px / rx;
  const cx = cos * qx - sin * qy + (from[0] + x) / 2, cy = sin * qx + cos * qy + (from[1] + y) / 2;
  const start = signed_angle(1, 0, (px - qx) / rx, (py - qy) / ry);
  let span = signed_angle((px - qx) / rx, (py - qy) / ry, (-px - qx) / rx, (-py - qy) / ry);
  if (!sweep && span > 0) span -= 2 * Math.PI;
  if (sweep && span < 0) span += 2 * Math.PI;
  const step = 2 * Math.acos(Math.max(0, 1 - tolerance / Math.max(rx, ry, tolerance)));
  const count = Math.max(2, Math.ceil(Math.abs(span) / step));
  for (let i = 1; i <= count; i++) {
    const t = start + span * i / count;
    out.push([cx + rx * Math.cos(t) * cos - ry * Math.sin(t) * sin, cy + rx * Math.cos(t) * sin + ry * Math.sin(t) * cos]);
  }
}

const quadratic_as_cubic = (p, q, e) => [p, [p[0] + (q[0] - p[0]) * 2 / 3, p[1] + (q[1] - p[1]) * 2 / 3],
  [e[0] + (q[0] - e[0]) * 2 / 3, e[1] + (q[1] - e[1]) * 2 / 3], e];

// One curve or line; returns the control point that a following S or T mirrors, or null.
function add_segment(points, at, letter, v, back, tolerance) {
  const mirror = back ? [2 * at[0] - back[0], 2 * at[1] - back[1]] : at;
  const pair = (i) => [v[i], v[i + 1]];
  switch (letter) {
    case 'c': cut_cubic(points, [at, pair(0), pair(2), pair(4)], tolerance); return pair(2);
    case 's': cut_cubic(points, [at, mirror, pair(0), pair(2)], tolerance); return pair(0);
    case 'q': cut_cubic(points, quadratic_as_cubic(at, pair(0), pair(2)), tolerance); return pair(0);
    case 't': cut_cubic(points, quadratic_as_cubic(at, mirror, pair(0)), tolerance); return mirror;
    case 'a': cut_arc(points, at, v, tolerance); return null;
    default: points.push(pair(0)); return null;
  }
}

function absolute(name, v, at) {
  const letter = name.toLowerCase();
  const dx = name === letter ? at[0] : 0, dy = name === letter ? at[1] : 0;
  if (letter === 'h') return [v[0] + dx, at[1]];
  if (letter === 'v') return [at[0], v[0] + dy];
  if (letter === 'a') return [...v.slice(0, 5), v[5] + dx, v[6] + dy];
  return v.map((n, i) => n + (i % 2 ? dy : dx));
}

export function path_lines(d, tolerance) {
  const lines = [];
  let points = null, at = [0, 0], back = null, family = '';
  for (const [name, values] of path_commands(d)) {
    const letter = name.toLowerCase();
    if (letter === 'z') {
      if (points) lines.push({ points, closed: true });
      at = points ? points[0] : at;
      points = null;
      continue;
    }
    const v = absolute(name, values, at);
    if (letter === 'm') {
      if (points && points.length > 1) lines.push({ points, closed: false });
      points = [[v[0], v[1]]];
      back = null;
    } else {
      points ??= [at];
      const kin = 'cs'.includes(letter) ? 'cs' : 'qt'.includes(letter) ? 'qt' : '';
      back = add_segment(points, at, letter, v, kin && kin === family ? back : null, tolerance);
      family = kin;
    }
    at = points[points.length - 1];
  }
  if (points && points.length > 1) lines.push({ points, closed: false });
  return lines;
}

export function ellipse_line(cx, cy, rx, ry, tolerance) {
  const points = [];
  cut_arc(points, [cx + rx, cy], [rx, ry, 0, 0, 1, cx - rx, cy], tolerance);
  cut_arc(points, [cx - rx, cy], [rx, ry, 0, 0, 1, cx + rx, cy], tolerance);
  return { points, closed: true };
}

export function rect_line(x, y, w, h, r, tolerance) {
  const k = Math.min(r, w / 2, h / 2);
  if (k <= 0) return { points: [[x, y], [x + w, y], [x + w, y + h], [x, y + h]], closed: true };
  return path_lines(`M${x + k} ${y}H${x + w - k}A${k} ${k} 0 0 1 ${x + w} ${y + k}V${y + h - k}A${k} ${k} 0 0 1 ${x + w - k} ${y + h}`
    + `H${x + k}A${k} ${k} 0 0 1 ${x} ${y + h - k}V${y + k}A${k} ${k} 0 0 1 ${x + k} ${y}Z`, tolerance)[0];
}
