// A reporter for node --test: the files in which a test failed, a line each.
export default async function* failedFiles(source) {
  const told = new Set();
  for await (const { type, data } of source) {
    if (type !== 'test:fail' || !data.file || told.has(data.file)) continue;
    told.add(data.file);
    yield `${data.file}\n`;
  }
}
