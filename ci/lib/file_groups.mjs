// Which source files can be compiled (unity.mjs) or looked at (tidy.mjs) as one: same flags, and no two of them with the
// same name in their unnamed namespaces: those would be defined twice, or become overloads of each other. Names are guessed
// from the layout that clang-format gives; where the guess is wrong, the group does not compile.

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

// Types at the margin of a header.
export const publicTypes = (text) => [...text.matchAll(/^(?:struct|class|enum class|using) (\w+)/gm)].map(([, name]) => name);

// A file stands alone that hides a public type in its unnamed namespace, or uses one of two of the same name there, or
// defines something for the headers after it.
function standsAlone(text, names, types) {
  if (/^#define/m.test(text)) return true;
  const used = [...text.matchAll(/^using [\w:]+::(\w+);$/gm)].map(([, name]) => name);
  return [...names].some((name) => types.includes(name)) || used.some((name) => types.indexOf(name) !== types.lastIndexOf(name));
}

// [{file, text, flags, mark}], the names of all public types -> [{flags, files, marks}]
export function groupsOf(changed, types, most = k_most) {
  const groups = [];
  for (const { file, text, flags, mark } of changed) {
    const names = unnamedNames(text);
    const alone = standsAlone(text, names, types);
    const fits = (one) => !one.alone && one.flags === flags && one.files.length < most && ![...names].some((name) => one.names.has(name));
    let group = alone ? undefined : groups.find(fits);
    if (group === undefined) groups.push(group = { flags, alone, files: [], marks: [], names: new Set() });
    group.files.push(file);
    group.marks.push(mark);
    for (const name of names) group.names.add(name);
  }
  return groups;
}
