// Entry of the page as one file (ci/lib/single.mjs): unpacks what it carries, then starts as ever.

import { unpack } from './single_files.js';

unpack(document.getElementById('files').textContent)
  .then(() => import('./main.js'))
  .catch((error) => window.rehale.showProblem('This page cannot start here.', 'Please update your browser, or use another one.', String(error)));
