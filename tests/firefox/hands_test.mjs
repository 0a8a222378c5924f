// Firefox: a whole run, practice and back by real keys alone; another by real clicks on the canvas alone.
import { test } from 'node:test';
import { walkThrough } from '../browser/support/walk.mjs';
import { byKeys, byMouse } from '../browser/support/ways.mjs';
import { firefoxForTests } from './support/firefox.mjs';

const app = firefoxForTests();

test('by keyboard: spray', () => app.with({ query: '?seed=1' }, (page) => walkThrough(byKeys(page), 'spray')));
test('by mouse: powder-cover', () => app.with({ query: '?seed=3' }, (page) => walkThrough(byMouse(page), 'powder-cover')));
