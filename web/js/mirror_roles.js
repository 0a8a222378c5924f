// What each role is on the page: a real element and its attributes. Plain data in, plain data out; only
// applyFacts touches an element. Must not know the tree around it.

const TAGS = {
  group: 'div', radio_group: 'div', list: 'ul', list_item: 'li', paragraph: 'p', image: 'div',
  button: 'button', toggle: 'button', disclosure: 'button', radio: 'input', checkbox: 'input',
  spin: 'input', link: 'a', progress: 'progress', dialog: 'div', status: 'p',
  table: 'div', row: 'div', column_head: 'div', row_head: 'div', cell: 'div',
};
const INPUT_TYPES = { radio: 'radio', checkbox: 'checkbox', spin: 'number' };
const ARIA_ROLES = {  // where the element alone does not say it; list: Safari forgets unstyled lists
  radio_group: 'radiogroup', list: 'list', image: 'img', dialog: 'dialog', status: 'status',
  table: 'table', row: 'row', column_head: 'columnheader', row_head: 'rowheader', cell: 'cell',
};
const TEXT_ROLES = new Set(['heading', 'paragraph', 'status', 'button', 'toggle', 'disclosure', 'link',
  'column_head', 'row_head', 'cell']);
const CONTROLS = new Set(['button', 'toggle', 'disclosure', 'radio', 'checkbox', 'spin', 'link']);

export function isControl(node) { return CONTROLS.has(node.role); }

// Two nodes of one id with the same tag share an element.
export function tagOf(node) {
  if (node.role === 'heading') return `h${Math.min(6, Math.max(1, node.level || 1))}`;
  return TAGS[node.role] ?? 'div';
}

// The node's own words, or null where its children or its value speak.
export function textOf(node, hasChildren) {
  if (TEXT_ROLES.has(node.role)) return node.name ?? '';
  return node.role === 'list_item' && !hasChildren ? node.name ?? '' : null;
}

function focusOf(node) {
  if (node.role === 'dialog' || (node.role === 'heading' && (node.level || 1) === 1)) return '-1';
  return node.focusable && !isControl(node) ? '-1' : null;
}

function ariaRole(node) {
  return node.role === 'group' && node.name ? 'group' : ARIA_ROLES[node.role] ?? null;
}

function stateOf(node) {
  const flag = (on) => (on ? 'true' : 'false');
  const told = (number) => (number > 0 ? String(number) : null);
  const counted = node.role === 'list_item' || node.role === 'radio';
  return {
    'aria-pressed': node.role === 'toggle' ? flag(node.checked) : null,
    'aria-expanded': node.role === 'disclosure' ? flag(node.expanded) : null,
    'aria-disabled': node.disabled && isControl(node) ? 'true' : null,
    'aria-current': node.current ? (node.role === 'list_item' ? 'step' : 'true') : null,
    'aria-posinset': counted ? told(node.position) : null,
    'aria-setsize': counted ? told(node.set_size) : null,
    'aria-modal': node.role === 'dialog' ? 'true' : null,
    'aria-valuetext': node.role === 'spin' || node.role === 'progress' ? node.value || null : null,
  };
}

function kindOf(node) {
  const number = (value) => String(value ?? 0);
  switch (node.role) {
    case 'radio': return { name: `of-${node.parent ?? ''}` };
    case 'spin':
      return { min: number(node.min), max: number(node.max), step: number(node.step || 1), inputmode: 'decimal',
        autocomplete: 'off' };
    case 'progress': return { value: number(node.number), max: number(node.max || 1) };
    case 'link': {
      const away = /^https?:/.test(node.value ?? '');
      return { href: node.value || null, target: away ? '_blank' : null,
        rel: away ? 'noopener noreferrer' : null };
    }
    default: return {};
  }
}

// Every attribute that the node decides; null: it has none.
export function attributesOf(node, hasChildren) {
  const label = textOf(node, hasChildren) === null ? node.name || null : null;
  return {
    role: ariaRole(node), type: INPUT_TYPES[node.role] ?? (tagOf(node) === 'button' ? 'button' : null),
    tabindex: focusOf(node), lang: node.language || null, 'aria-label': label, ...stateOf(node), ...kindOf(node),
  };
}

const RING_PX = 10;  // the focus ring (app.css) of what is in the box stays whole where nothing is cut off

// How much of the box lies outside the scroll area that holds it: a clip-path, or '' when nothing does.
// The box itself keeps its true size: it stays focusable and is measured as drawn.
export function clipOf(node) {
  if (!node.clip) return '';
  const [x, y, w, h] = node.rect;
  const [cx, cy, cw, ch] = node.clip;
  const cut = [cy - y, x + w - cx - cw, y + h - cy - ch, cx - x].map((px) => Math.max(0, px));
  if (cut.every((px) => px < 0.5)) return '';
  if (cut[0] >= h || cut[2] >= h || cut[1] >= w || cut[3] >= w) return 'inset(50%)';
  return `inset(${cut.map((px) => `${px < 0.5 ? -RING_PX : px}px`).join(' ')})`;
}

// Values of inputs are what C++ says, but for a number that is being typed.
export function applyValue(element, node) {
  if (node.role === 'radio' || node.role === 'checkbox') element.checked = Boolean(node.checked);
  if (node.role === 'spin' && element.dataset.typing === undefined) {
    const value = String(node.number ?? 0);
    if (element.value !== value) element.value = value;
  }
}

export function applyAttributes(element, attributes) {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null) element.removeAttribute(name);
    else if (element.getAttribute(name) !== value) element.setAttribute(name, value);
  }
}
