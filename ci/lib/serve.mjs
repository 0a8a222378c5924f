// Serves a folder of static files on 127.0.0.1, compressed files first. usage: serve.mjs DIR PORT
// Also a module: serve(dir, port) -> {url, close}.
import { createReadStream, existsSync, realpathSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { headersFor } from './headers.mjs';

const k_types = {
  '.html': 'text/html; charset=utf-8', '.js': 'text/javascript; charset=utf-8', '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8', '.wasm': 'application/wasm', '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf', '.txt': 'text/plain; charset=utf-8', '.png': 'image/png',
  '.webmanifest': 'application/manifest+json',
};

// The file for a request, never outside dir; undefined when there is none.
function file_of(dir, url) {
  let name;
  try {
    name = decodeURIComponent(new URL(url, 'http://x').pathname);
  } catch {
    return undefined;
  }
  if (name.endsWith('/')) name += 'index.html';
  const file = path.join(dir, path.normalize(name));
  return file.startsWith(dir + path.sep) && existsSync(file) && statSync(file).isFile() ? file : undefined;
}

function answer(dir, request, response) {
  const file = file_of(dir, request.url);
  if (!file || !['GET', 'HEAD'].includes(request.method)) {
    response.writeHead(file ? 405 : 404, { 'content-type': 'text/plain' });
    return response.end('There is no such file here.\n');
  }
  const accepted = request.headers['accept-encoding'] ?? '';
  const [encoding, ending] = /\bbr\b/.test(accepted) && existsSync(`${file}.br`) ? ['br', '.br']
    : /\bgzip\b/.test(accepted) && existsSync(`${file}.gz`) ? ['gzip', '.gz'] : [undefined, ''];
  const headers = {
    'content-type': k_types[path.extname(file)] ?? 'application/octet-stream',
    'content-length': statSync(file + ending).size, 'cache-control': 'no-cache', vary: 'accept-encoding',
    ...headersFor(file),
  };
  if (encoding) headers['content-encoding'] = encoding;
  response.writeHead(200, headers);
  if (request.method === 'HEAD') return response.end();
  createReadStream(file + ending).pipe(response);
}

export function serve(dir, port = 0) {
  const root = realpathSync(dir);
  const server = createServer((request, response) => answer(root, request, response));
  return new Promise((done, failed) => {
    server.once('error', failed);
    server.listen(port, '127.0.0.1', () => done({
      url: `http://127.0.0.1:${server.address().port}/`,
      close: () => new Promise((closed) => { server.closeAllConnections?.(); server.close(closed); }),
    }));
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [dir, port] = process.argv.slice(2);
  try {
    const { url } = await serve(dir, Number(port));
    console.log(`Rehale is at ${url}  (stop with Ctrl+C)`);
  } catch (error) {
    console.error(error.code === 'EADDRINUSE'
      ? `Port ${port} is taken. Pick another one: ci/serve --port ${Number(port) + 1}`
      : `The page cannot be served: ${error.message}`);
    process.exit(1);
  }
}
