// A family's scene.svg and poses.json -> the text the page draws from (format: web/kit/illustration.h).
// Usage: node ci/lib/scene.mjs ASSETS_DIR OUT_DIR   writes OUT_DIR/families/<family>/scene.txt
import { mkdirSync, readFileSync, readdirSync, existsSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { SceneError, place_of, read_svg } from './svg_read.mjs';
import { k_roles, k_shape_attributes, shapes_of } from './scene_shapes.mjs';

export { SceneError };
export const k_most_bytes = 25 * 1024;
const k_unit = [1, 0, 0, 1, 0, 0];
const k_skipped = ['title', 'desc', 'style'];
const k_common_href = '../../scene-common.svg#';

function multiply([a, b, c, d, e, f], [g, h, i, j, k, l]) {
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

function read_transform(text) {
  let matrix = k_unit;
  const rest = (text ?? '').replace(/([a-z]+)\(([^)]*)\)/gi, (_, name, inside) => {
    const v = inside.split(/[\s,]+/).filter(Boolean).map(Number);
    const turn = (v[0] ?? 0) * Math.PI / 180, cos = Math.cos(turn), sin = Math.sin(turn);
    const [x = 0, y = 0] = v.slice(1);
    const known = {
      translate: [1, 0, 0, 1, v[0], v[1] ?? 0],
      scale: [v[0], 0, 0, v[1] ?? v[0], 0, 0],
      rotate: [cos, sin, -sin, cos, x - cos * x + sin * y, y - sin * x - cos * y],
      matrix: v,
    }[name];
    if (!known || known.length !== 6 || known.some(Number.isNaN)) throw new Error(`transform ${name}(${inside}) is not known`);
    matrix = multiply(matrix, known);
    return '';
  });
  if (rest.replace(/[\s,]/g, '')) throw new Error(`cannot read transform: ${rest.trim()}`);
  return matrix;
}

function allow(node, names) {
  for (const name of Object.keys(node.attrs)) {
    if (!names.includes(name)) throw new Error(`attribute ${name} is not known here`);
  }
}

function two_numbers(text, name) {
  const v = text.trim().split(/[\s,]+/).map(Number);
  if (v.length !== 2 || v.some(Number.isNaN)) throw new Error(`${name} must be two numbers, is ${text}`);
  return v;
}

class Compiler {
  constructor(file, common) {
    this.file = file;
    this.common = common;
    this.items = [];        // { open: part } | { close: true } | { shape }
    this.parts = new Map();  // name -> { index, hidden, about }
  }

  at(node, run) {
    try {
      return run();
    } catch (error) {
      if (error instanceof SceneError) throw error;
      throw new SceneError(this.file, place_of(node), error.message);
    }
  }

  children(node, matrix) {
    for (const child of node.children) this.at(child, () => this.element(child, matrix));
  }

  element(node, matrix) {
    if (k_skipped.includes(node.tag) || node.tag === 'defs') return;
    if (node.tag === 'g') this.group(node, matrix);
    else if (node.tag === 'use') this.use(node, matrix);
    else if (node.tag in k_shape_attributes) {
      allow(node, [...k_shape_attributes[node.tag], 'class', 'transform', 'id']);
      const placed = multiply(matrix, read_transform(node.attrs.transform));
      for (const shape of shapes_of(node.tag, node.attrs, placed)) this.items.push({ shape });
    } else throw new Error('this element is not known');
  }

  group(node, matrix) {
    allow(node, ['id', 'transform', 'data-hidden', 'data-about', 'class']);
    const placed = multiply(matrix, read_transform(node.attrs.transform));
    const name = /^part-(.+)$/.exec(node.attrs.id ?? '')?.[1];
    if (!name) {
      if (node.attrs['data-hidden'] || node.attrs['data-about']) throw new Error('only a group with id="part-…" can hide or turn');
      this.children(node, placed);
      return;
    }
    if (placed.some((v, i) => v !== k_unit[i])) throw new Error('a part, and what holds it, has no transform of its own');
    if (this.parts.has(name)) throw new Error(`part ${name} is there twice`);
    const hidden = node.attrs['data-hidden'] ?? 'false';
    if (!['true', 'false'].includes(hidden)) throw new Error(`data-hidden must be true or false, is ${hidden}`);
    const about = two_numbers(node.attrs['data-about'] ?? '0 0', 'data-about');
    const part = { name, index: this.parts.size, hidden: hidden === 'true', about };
    this.parts.set(name, part);
    this.items.push({ open: part });
    this.children(node, k_unit);
    this.items.push({ close: true });
  }

  use(node, matrix) {
    allow(node, ['href', 'x', 'y', 'transform']);
    const { href = '', x = '0', y = '0' } = node.attrs;
    const id = href.startsWith(k_common_href) ? href.slice(k_common_href.length) : null;
    const target = id && this.common.get(id);
    if (!target) throw new Error(`href must be ${k_common_href}<id of a figure>, is ${href}`);
    const [dx, dy] = two_numbers(`${x} ${y}`, 'x and y');
    const placed = multiply(multiply(matrix, read_transform(node.attrs.transform)), [1, 0, 0, 1, dx, dy]);
    const inside = new Compiler('scene-common.svg', this.common);
    inside.children({ children: [target] }, placed);
    if (inside.parts.size) throw new SceneError('scene-common.svg', place_of(target), 'a shared figure has no parts of its own');
    this.items.push(...inside.items);
  }
}

// Every figure of scene-common.svg by its id.
export function read_common(file, source) {
  const figures = new Map();
  const walk = (node) => {
    if (node.attrs.id) {
      if (figures.has(node.attrs.id)) throw new SceneError(file, place_of(node), 'this id is there twice');
      figures.set(node.attrs.id, node);
    }
    node.children.forEach(walk);
  };
  walk(read_svg(file, source));
  return figures;
}

export function compile_drawing(file, source, common = new Map()) {
  const svg = read_svg(file, source);
  const view = (svg.attrs.viewBox ?? '').trim().split(/[\s,]+/).map(Number);
  if (view.length !== 4 || view.some(Number.isNaN) || view[2] <= 0 || view[3] <= 0) {
    throw new SceneError(file, place_of(svg), 'viewBox="x y width height" is wanted');
  }
  const compiler = new Compiler(file, common);
  compiler.children(svg, k_unit);
  return { view, items: compiler.items, parts: compiler.parts };
}

function numbers(value, count, what) {
  if (!Array.isArray(value) || value.length !== count || !value.every(Number.isFinite)) throw new Error(`${what} must be ${count} numbers`);
  return value;
}

function read_change(name, change, part) {
  for (const key of Object.keys(change)) {
    if (!['move', 'turn_deg', 'about', 'scale', 'hide'].includes(key)) throw new Error(`part ${name}: ${key} is not known`);
  }
  if (change.hide !== undefined && typeof change.hide !== 'boolean') throw new Error(`part ${name}: hide must be true or false`);
  if (change.turn_deg !== undefined && !Number.isFinite(change.turn_deg)) throw new Error(`part ${name}: turn_deg must be a number`);
  const out = { part: part.index };
  if (change.move) out.move = numbers(change.move, 2, `part ${name}: move`);
  if (change.turn_deg !== undefined) out.turn = change.turn_deg;
  if (change.about) out.about = numbers(change.about, 2, `part ${name}: about`);
  if (change.scale) out.scale = numbers(change.scale, 2, `part ${name}: scale`);
  if (change.hide !== undefined) out.hide = change.hide;
  return out;
}

function read_pose(pose, parts) {
  for (const key of Object.keys(pose)) {
    if (!['shows', 'parts', 'frame'].includes(key)) throw new Error(`${key} is not known`);
  }
  if (typeof pose.shows !== 'string' || !pose.shows.trim()) throw new Error('"shows" must say in words what one sees');
  const changes = Object.entries(pose.parts ?? {}).map(([name, change]) => {
    const part = parts.get(name);
    if (!part) throw new Error(`part ${name} is not in scene.svg`);
    return read_change(name, change, part);
  });
  return { shows: pose.shows, frame: pose.frame ? numbers(pose.frame, 4, 'frame') : null, changes };
}

export function compile_poses(file, source, parts) {
  let data;
  try {
    data = JSON.parse(source);
  } catch (error) {
    throw new SceneError(file, 'whole file', `is not JSON: ${error.message}`);
  }
  if (data.schema !== 1) throw new SceneError(file, '/schema', 'must be 1');
  const poses = new Map();
  for (const [name, pose] of Object.entries(data.poses ?? {})) {
    try {
      poses.set(name, read_pose(pose, parts));
    } catch (error) {
      throw new SceneError(file, `/poses/${name}`, error.message);
    }
  }
  if (!poses.has(data.start)) throw new SceneError(file, '/start', 'must name a pose');
  return { start: data.start, poses };
}

const tenths = (values) => values.map((v) => Math.round(v * 10)).join(' ');

function shape_line({ fill, stroke, width, closed, convex, points }) {
  const kind = !closed ? 'o' : convex ? 'c' : 'k';
  const steps = points.map((p, i) => (i ? `${p[0] - points[i - 1][0]} ${p[1] - points[i - 1][1]}` : `${p[0]} ${p[1]}`));
  return `s ${k_roles[fill]} ${k_roles[stroke]} ${width} ${kind} ${points.length} ${steps.join(' ')}`;
}

function change_line({ part, move, turn, about, scale, hide }) {
  const words = [`t ${part}`];
  if (move) words.push(`m ${tenths(move)}`);
  if (turn !== undefined) words.push(`r ${tenths([turn])}`);
  if (about) words.push(`a ${tenths(about)}`);
  if (scale) words.push(`z ${scale.map((v) => Math.round(v * 1000)).join(' ')}`);
  if (hide !== undefined) words.push(`h ${hide ? 1 : 0}`);
  return words.join(' ');
}

// The format is told in web/kit/illustration.h.
export function scene_text({ view, items, parts }, { start, poses }) {
  const lines = ['rehale-scene 1', `view ${tenths(view)}`];
  for (const item of items) {
    if (item.open) lines.push(`( ${item.open.name} ${item.open.hidden ? 1 : 0} ${tenths(item.open.about)}`);
    else if (item.close) lines.push(')');
    else lines.push(shape_line(item.shape));
  }
  lines.push(`start ${start}`);
  for (const [name, { frame, changes }] of poses) {
    lines.push(`pose ${name}${frame ? ` ${tenths(frame)}` : ''}`, ...changes.map(change_line));
  }
  lines.push(`end ${parts.size} ${poses.size}`, '');
  return lines.join('\n');
}

// { text, poses: Map name -> { shows, frame, changes }, parts, drawing } of one family's folder.
export function compile_family(assets_dir, family) {
  const read = (...names) => readFileSync(path.join(assets_dir, ...names), 'utf8');
  const common = read_common('scene-common.svg', read('scene-common.svg'));
  const name = (file) => `families/${family}/${file}`;
  const drawing = compile_drawing(name('scene.svg'), read('families', family, 'scene.svg'), common);
  const posed = compile_poses(name('poses.json'), read('families', family, 'poses.json'), drawing.parts);
  const text = scene_text(drawing, posed);
  if (text.length > k_most_bytes) throw new SceneError(name('scene.svg'), 'whole file', `is ${text.length} bytes compiled; at most ${k_most_bytes}`);
  return { text, drawing, parts: drawing.parts, ...posed };
}

export function families_of(assets_dir) {
  const dir = path.join(assets_dir, 'families');
  return readdirSync(dir).filter((f) => existsSync(path.join(dir, f, 'scene.svg'))).sort();
}

function main([assets_dir, out_dir]) {
  if (!assets_dir || !out_dir) throw new Error('usage: node ci/lib/scene.mjs ASSETS_DIR OUT_DIR');
  for (const family of families_of(assets_dir)) {
    const { text } = compile_family(assets_dir, family);
    const dir = path.join(out_dir, 'families', family);
    mkdirSync(dir, { recursive: true });
    writeFileSync(path.join(dir, 'scene.txt'), text);
    console.log(`scene ${family}: ${text.length} bytes`);
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  try {
    main(process.argv.slice(2));
  } catch (error) {
    console.error(`scene: ${error.message}`);
    process.exit(1);
  }
}
