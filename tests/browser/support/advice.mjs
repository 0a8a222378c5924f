// What the result screen tells: one thing to mend and no other, and every technique once.
import assert from 'node:assert/strict';
import { find } from './hands.mjs';

const linesIn = (locator) => locator.getByRole('listitem').allTextContents();

// Every other technique is told exactly once: as going well, or as one that could not be told.
export async function assertTheRest(page, family, mended) {
  const well = await linesIn(find(page, 'group', 'You have this'));
  const all = await linesIn(page);
  for (const { id, has, name } of family.techniques) {
    const told = [well.includes(has), all.includes(name)].filter(Boolean).length;
    assert.equal(told, id === mended ? 0 : 1, `${id}: going well [${well}], of all [${all}]`);
  }
  assert.equal(await find(page, 'heading', 'Some of your answers do not fit together').count(), 0);
}

export async function assertOnlyAdvice(page, family, { technique, name }) {
  const cards = await find(page, 'group', 'To do better').all();
  const titles = await Promise.all(cards.map((card) => card.getByRole('heading', { level: 2 }).textContent()));
  assert.deepEqual(titles, [name]);
  await find(page, 'button', `Show me how: ${name}`).waitFor();
  await assertTheRest(page, family, technique);
}
