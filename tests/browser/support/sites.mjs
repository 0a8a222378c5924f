// The built pages, served for a test. ci/build site and ci/build demo make them.
import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { serve } from '../../../ci/lib/serve.mjs';

const k_root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../..');

async function served(folder, part) {
  if (!existsSync(path.join(folder, 'index.html'))) throw new Error(`${folder} is not there: ci/build ${part}`);
  return serve(folder);
}

// {url, close}. REHALE_SITE, REHALE_DEMO: other folders than .build/site, .build/demo.
export const serveSite = () => served(process.env.REHALE_SITE ?? path.join(k_root, '.build/site'), 'site');
export const serveDemo = () => served(process.env.REHALE_DEMO ?? path.join(k_root, '.build/demo'), 'demo');
