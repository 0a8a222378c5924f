// What must hold of every picture of the page in Firefox, and the picture itself for a person to look at.
import assert from 'node:assert/strict';
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { strayBoxes } from '../../browser/support/checks.mjs';
import { strayEdges } from '../../browser/support/drawn.mjs';
import { rest } from '../../browser/support/hands.mjs';

export const k_pictures = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../../.build/firefox');

// Elements lie where C++ drew, and what is in the picture lies where the elements do.
export async function lookAt(page, name) {
  mkdirSync(k_pictures, { recursive: true });
  await rest(page);
  const { width, height } = page.viewportSize();
  const file = path.join(k_pictures, `${name}-${width}x${height}.png`);
  await page.screenshot({ path: file });
  assert.deepEqual(await page.evaluate(() => [innerWidth, innerHeight]), [width, height]);
  assert.deepEqual(await strayBoxes(page), [], file);
  const { seen, stray } = await strayEdges(page);
  assert.ok(seen > 3, `${seen} edges found in ${file}`);
  assert.deepEqual(stray, [], file);
  return file;
}
