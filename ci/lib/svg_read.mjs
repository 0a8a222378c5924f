// Reads the small part of SVG our drawings use into a tree of { tag, attrs, children, line }.
// Must not know what elements mean. Anything unusual is an error with file and line.

export class SceneError extends Error {
  constructor(file, place, detail) {
    super(`${file}: ${place}: ${detail}`);
    this.file = file;
    this.place = place;
    this.detail = detail;
  }
}

const k_entities = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

function plain(file, line, text) {
  return text.replace(/&([a-z]+);/g, (_, name) => {
    if (!(name in k_entities)) throw new SceneError(file, `line ${line}`, `unknown entity &${name};`);
    return k_entities[name];
  });
}

function read_attributes(file, line, text) {
  const attrs = {};
  const rest = text.replace(/\s*([\w:.-]+)\s*=\s*(?:"([^"<]*)"|'([^'<]*)')/g, (_, name, a, b) => {
    if (name in attrs) throw new SceneError(file, `line ${line}`, `attribute ${name} is there twice`);
    attrs[name] = plain(file, line, a ?? b);
    return '';
  });
  if (rest.trim()) throw new SceneError(file, `line ${line}`, `cannot read attributes: ${rest.trim()}`);
  return attrs;
}

const k_token = /<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<\/([\w:-]+)\s*>|<([\w:-]+)((?:\s+[\w:.-]+\s*=\s*(?:"[^"<]*"|'[^'<]*'))*)\s*(\/?)>|[^<]+|</g;

// The root element. Words are kept only for title, desc and style; elsewhere they are an error.
export function read_svg(file, source) {
  const root = { tag: '#root', attrs: {}, children: [], line: 1 };
  const open = [root];
  let line = 1;
  for (const token of source.matchAll(k_token)) {
    const top = open[open.length - 1];
    const [all, closing, tag, attrs, alone] = token;
    if (closing) {
      if (top.tag !== closing) throw new SceneError(file, `line ${line}`, `</${closing}> closes <${top.tag}>`);
      open.pop();
    } else if (tag) {
      const node = { tag, attrs: read_attributes(file, line, attrs), children: [], line };
      top.children.push(node);
      if (!alone) open.push(node);
    } else if (!all.startsWith('<!--') && !all.startsWith('<?') && all.trim()) {
      if (!['title', 'desc', 'style'].includes(top.tag)) {
        throw new SceneError(file, `line ${line}`, `words or a broken tag inside <${top.tag}>: ${all.trim().slice(0, 40)}`);
      }
    }
    line += all.split('\n').length - 1;
  }
  if (open.length !== 1) throw new SceneError(file, `line ${open.at(-1).line}`, `<${open.at(-1).tag}> is never closed`);
  if (root.children.length !== 1 || root.children[0].tag !== 'svg') throw new SceneError(file, 'line 1', 'one <svg> element is wanted');
  return root.children[0];
}

// "<path id=\"x\"> (line 12)", for messages.
export function place_of(node) {
  const id = node.attrs.id ? ` id="${node.attrs.id}"` : '';
  return `<${node.tag}${id}> (line ${node.line})`;
}
