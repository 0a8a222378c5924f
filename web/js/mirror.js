// The DOM mirror: one real element for each node of the last frame, placed over what is drawn. Kept by id,
// changed where it differs, never built anew: a screen reader's place and the focus stay.
// Must not know screens, WASM or the canvas.

import { applyAttributes, applyValue, attributesOf, clipOf, tagOf, textOf } from './mirror_roles.js';

const ROOT = [0, 0, 0, 0];

function same(a, b) {
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) =>
    Array.isArray(a[key]) ? b[key] !== undefined && a[key].join() === b[key].join() : a[key] === b[key]);
}

// Children in reading order for each parent id; nodes of an unknown parent belong to the root ('').
export function familiesOf(nodes) {
  const known = new Set(nodes.map((node) => node.id));
  const families = new Map([['', []]]);
  for (const node of nodes) {
    const parent = known.has(node.parent) ? node.parent : '';
    if (!families.has(parent)) families.set(parent, []);
    families.get(parent).push(node.id);
  }
  return families;
}

export class Mirror {
  constructor(root, notes) {
    this.root = root;
    this.notes = notes;  // hidden texts that aria-describedby points to
    this.entries = new Map();  // id -> {node, element, note}
    this.ids = new WeakMap();  // element -> id
    this.frame = { screen: '', nodes: [] };
  }

  get size() { return this.entries.size; }
  element(id) { return this.entries.get(id)?.element; }
  node(id) { return this.entries.get(id)?.node; }

  // The id of the mirror element that is or holds `element`.
  idOf(element) {
    for (let at = element; at && at !== this.root; at = at.parentElement) {
      if (this.ids.has(at)) return this.ids.get(at);
    }
    return '';
  }

  update(frame) {
    const families = familiesOf(frame.nodes);
    this.frame = frame;
    this.dropGone(frame.nodes);
    for (const node of frame.nodes) this.applyNode(node, families.has(node.id));
    for (const [id, children] of families) this.putInOrder(id, children);
    this.applyDialog(families);
    if (frame.language) document.documentElement.lang = frame.language;
    if (frame.title) document.title = frame.title;
    document.documentElement.dataset.ground = frame.ground ?? '';
  }

  dropGone(nodes) {
    const tags = new Map(nodes.map((node) => [node.id, tagOf(node)]));
    for (const [id, { element, node, note }] of this.entries) {
      if (tags.get(id) === tagOf(node)) continue;
      while (element.firstElementChild) this.root.append(element.firstElementChild);  // those that stay
      element.remove();
      note?.remove();
      this.entries.delete(id);
    }
  }

  applyNode(node, hasChildren) {
    let entry = this.entries.get(node.id);
    if (!entry) {
      entry = { element: document.createElement(tagOf(node)) };
      entry.element.dataset.id = node.id;
      this.ids.set(entry.element, node.id);
      this.entries.set(node.id, entry);
    }
    const { element } = entry;
    if (!entry.node || entry.hasChildren !== hasChildren || !same(entry.node, node)) {
      applyAttributes(element, attributesOf(node, hasChildren));
      const text = textOf(node, hasChildren);
      if (text !== null && element.textContent !== text) element.textContent = text;
      this.applyNote(entry, node);
      applyValue(element, node);
    }
    entry.node = node;
    entry.hasChildren = hasChildren;
    this.place(entry);
  }

  applyNote(entry, node) {
    if (!node.description) {
      entry.note?.remove();
      entry.note = undefined;
    } else {
      entry.note ??= this.notes.appendChild(document.createElement('p'));
      entry.note.id = `about-${node.id}`;
      entry.note.textContent = node.description;
    }
    applyAttributes(entry.element, { 'aria-describedby': node.description ? `about-${node.id}` : null });
  }

  place(entry) {
    const { node, element } = entry;
    const from = this.entries.get(node.parent)?.node.rect ?? ROOT;
    const [x, y, w, h] = node.rect;
    const style = {
      left: `${x - from[0]}px`, top: `${y - from[1]}px`, width: `${w}px`, height: `${h}px`,
      clipPath: clipOf(node),
    };
    const key = Object.values(style).join();
    if (entry.placed === key) return;
    entry.placed = key;
    Object.assign(element.style, style);
  }

  putInOrder(parentId, children) {
    const parent = parentId === '' ? this.root : this.element(parentId);
    let before = null;
    for (const id of children) {
      const element = this.element(id);
      const next = before ? before.nextElementSibling : parent.firstElementChild;
      if (next !== element) move(parent, element, next);
      before = element;
    }
  }

  // While a dialog is open, all that neither holds it nor is in it is inert.
  applyDialog(families) {
    this.modal = this.frame.nodes.filter((node) => node.role === 'dialog').pop()?.id ?? '';
    const open = new Set();
    for (let id = this.modal; id; id = this.node(id)?.parent) open.add(id);
    for (const [parent, children] of families) {
      const matters = this.modal !== '' && (parent === '' || (open.has(parent) && parent !== this.modal));
      for (const id of children) this.element(id).inert = matters && !open.has(id);
    }
  }

  // The element shows again what C++ says, after an action that may have been refused. Radios of one
  // group uncheck each other: all of them.
  settle(id) {
    const node = this.node(id);
    if (!node) return;
    for (const entry of this.entries.values()) {
      const other = entry.node;
      const grouped = other.role === 'radio' && node.role === 'radio' && other.parent === node.parent;
      if (other === node || grouped) applyValue(entry.element, other);
    }
  }
}

// Keeps focus and place where the browser can (moveBefore); elsewhere mirror_focus.js mends the focus.
function move(parent, element, next) {
  if (parent.moveBefore && element.isConnected) parent.moveBefore(element, next);
  else parent.insertBefore(element, next);
}
