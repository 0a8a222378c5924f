// A part of web/js as it is bundled, as a module for node.
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');

export async function bundled(file) {
  const { outputFiles } = await build({
    entryPoints: [path.join(root, 'web/js', file)], bundle: true, format: 'esm', write: false,
    nodePaths: [path.join(root, 'ci/node_modules')], external: ['./later/*'], loader: { '.css': 'empty' },
  });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].text).toString('base64')}`);
}
