// Which source files can be compiled (unity.mjs) or looked at (tidy.mjs) as one: same flags, and no two of them with the
// same name in their unnamed namespaces, which would be defined twice or become overloads of each other, or with a
// `using` of two things of one name. Names are guessed from the layout that clang-format gives; where the guess is
// wrong, the group does not compile.

const k_most = 9;  // files in a group: enough groups for all cores

// Names that stand at the margin inside `namespace {`.
export function unnamedNames(text) {
  const names = new Set();
  for (const [, block] of text.matchAll(/^namespace \{$(.*?)^\}  \/\/ namespace$/gms)) {
    for (const line of block.split('\n')) {
      if (!/^[A-Za-z]/.test(line) || /^(?:using|template|return|static_assert)\b/.test(line)) continue;
      const test = /^TEST(?:_F|_P)?\((\w+), (\w+)/.exec(line);
      if (test) names.add(`${test[1]}_${test[2]}`);
      if (test) continue;
      const head = line.split(/[({=;[]/)[0].trim();
      const name = /(\w+)$/.exec(head.split(',')[0])?.[1];
      if (name) names.add(name);
      for (const constant of line.match(/^(?:constexpr|const) .*/)?.[0].match(/\bk_\w+(?= =|\[)/g) ?? []) names.add(constant);
    }
  }
  if (/^int main\(/m.test(text)) names.add('main');
  return names;
}

// The first namespace with a name; '' for tests and programs, whose own things stand in an unnamed one.
const spaceOf = (text) => /^namespace ([\w:]+) \{/m.exec(text)?.[1] ?? '';

// Types and constants at the margin of a header, each with its namespace: 'rehale::check::Mark'.
export function publicNames(text) {
  const types = [...text.matchAll(/^(?:struct|class|enum class|using) (\w+)/gm)].map(([, name]) => name);
  const constants = [...text.matchAll(/^inline constexpr .*/gm)].flatMap(([line]) => line.match(/\bk_\w+(?= =|\[|\{)/g) ?? []);
  return [...types, ...constants].map((name) => `${spaceOf(text)}::${name}`);
}

// Name -> where it comes from: '' for the file's own, else as it was said ('check::Kind').
function namesIn(text) {
  const names = new Map([...unnamedNames(text)].map((name) => [name, '']));
  for (const [, origin, name] of text.matchAll(/^using ([\w:]+)::(\w+);$/gm)) names.set(name, `${origin}::${name}`);
  return names;
}

// A file stands alone that calls something of its own, or of elsewhere, as something public of its namespace is called, or
// that defines something for the headers after it.
function standsAlone(text, space, names, others) {
  const own = space === '' ? ['', 'rehale'] : [space];  // tests say `using namespace rehale`
  return /^#define/m.test(text) || [...names].some(([name, origin]) =>
    own.some((each) => others.has(`${each}::${name}`) && !`${each}::${name}`.endsWith(`::${origin}`)));
}

const disagrees = (one, space, names) => one.space === space &&
  [...names].some(([name, origin]) => one.names.has(name) && (origin === '' || one.names.get(name) !== origin));

// [{file, text, flags, mark}], all public names -> [{flags, files, marks}]
export function groupsOf(changed, public_names, most = k_most) {
  const [groups, others] = [[], new Set(public_names)];
  for (const { file, text, flags, mark } of changed) {
    const [space, names] = [spaceOf(text), namesIn(text)];
    const alone = standsAlone(text, space, names, others);
    const fits = (one) => !one.alone && one.flags === flags && one.files.length < most && !one.parts.some((part) => disagrees(part, space, names));
    let group = alone ? undefined : groups.find(fits);
    if (group === undefined) groups.push(group = { flags, alone, files: [], marks: [], parts: [] });
    group.files.push(file);
    group.marks.push(mark);
    group.parts.push({ space, names });
  }
  return groups;
}
