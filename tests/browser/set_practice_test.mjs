// The whole loop of a set practice: an educator makes a key and a link, a person does the check in another browser
// context, the sealed code that comes out is opened with the key file and is that person's run. By keyboard, and on
// a phone by finger. Slips on paper: the QR codes read back to the same link.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { decode } from 'cborg';
import { k_sizes, probe, waitForIdle } from './support/browser.mjs';
import { familyFromAssets } from './support/person.mjs';
import { underPolicy } from './support/policy.mjs';
import { copied, doIt, hash, k_clipboard, k_passphrase, setPractice } from './support/set_practice.mjs';
import { readByZbar } from './support/qr.mjs';
import { appForTests } from './support/run.mjs';
import { openSealed, readSealed } from './support/sealed.mjs';
import { awaitScreen } from './support/walk.mjs';
import { byKeys, byReader, byTouch } from './support/ways.mjs';

const app = appForTests();
const k_out = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../.build/set_practice');
// window.print() does nothing here: the page stays until it is told that printing is over.
const k_no_print = 'window.print = () => { window.printed = (window.printed ?? 0) + 1; }';

const assignmentOf = (link) => decode(Buffer.from(hash(link).slice(5), 'base64url').subarray(0, -4));

// A code keeps tenths of seconds, and ticks in the order of the question's options.
const k_several = familyFromAssets('spray').questions.filter(({ kind }) => kind === 'several').map(({ id }) => id);
const sorted = (event) => (k_several.includes(event.question) && event.answer?.picked
  ? { ...event, answer: { picked: [...event.answer.picked].sort() } } : event);

function assertSameRun(one, other) {
  assert.equal(one.events.length, other.events.length);
  for (const [n, { at_ms, ...event }] of one.events.entries()) {
    const { at_ms: also, ...same } = other.events[n];
    assert.deepEqual(sorted(event), sorted(same));
    assert.ok(Math.abs(at_ms - also) <= 100 * (n + 1), `event ${n}: ${at_ms} and ${also}`);
  }
}

// The result inside, on the page, is what the person saw.
async function assertOpens({ link, run, advice }, { link: asked, keyFile }) {
  const code = hash(link).slice(3);
  assert.equal(code.slice(0, 2), 'S1');
  assert.ok(link.length <= 400, `${link.length} letters`);
  const [families, , , , , , id, key] = assignmentOf(asked);
  assert.deepEqual(families, ['spray']);
  assert.deepEqual(Buffer.from(readSealed(code).assignment), Buffer.from(id));
  assert.equal(Buffer.from(key).toString('base64url'), JSON.parse(keyFile).publicKey);
  assert.equal(await openSealed(code, keyFile, 'four plain green word'), '');
  const inside = await openSealed(code, keyFile, k_passphrase);
  assert.match(inside, /^R[12]/);
  await app.with({ query: `#r=${inside}`, calm: true }, async (page) => {
    await awaitScreen(page, 'result');
    assertSameRun(JSON.parse(await page.evaluate(() => window.rehale.exportRun())), run);
    assert.deepEqual(await page.getByRole('main').getByRole('heading', { level: 2 }).allInnerTexts(), advice);
  });
}

describe('from the educator to the person and back, sealed', { concurrency: 2 }, () => {
  test('by keyboard, on a large screen, under the strictest content policy', async () => {
    const wish = { size: k_sizes.screen, calm: true, context: k_clipboard, route: underPolicy };
    let made, done;
    await app.with({ ...wish, query: '#set' }, async (page) => {
      made = await setPractice(byKeys(page));
      assert.deepEqual(page.complaints, []);
    });
    await app.with({ ...wish, query: `?seed=5${hash(made.link)}` }, async (page) => {
      done = await doIt(byKeys(page));
      assert.deepEqual(page.complaints, []);
    });
    await assertOpens(done, made);
  });

  test('by finger, on a phone', async () => {
    const wish = { size: k_sizes.phone, touch: true, calm: true, context: k_clipboard };
    let made, done;
    await app.with({ ...wish, query: '#set' }, async (page) => { made = await setPractice(byTouch(page)); });
    await app.with({ ...wish, query: `?seed=6${hash(made.link)}` }, async (page) => { done = await doIt(byTouch(page)); });
    await assertOpens(done, made);
  });
});

test('the key dialog: called off by Escape, nothing is kept; a key file can be used again', async () => {
  let made;
  await app.with({ query: '#set', calm: true, context: k_clipboard }, async (page) => { made = await setPractice(byReader(page)); });
  const file = path.join(k_out, 'key.json');
  mkdirSync(k_out, { recursive: true });
  writeFileSync(file, made.keyFile);
  await app.with({ query: '#set', calm: true, context: k_clipboard }, async (page) => {
    const way = byReader(page);
    await awaitScreen(page, 'set-practice');
    await way.press('checkbox', 'Soft mist inhaler');
    await way.press('button', 'Seal the results');
    await byKeys(page).begin('button', 'Make my key');
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    assert.equal(await page.evaluate(() => document.activeElement.textContent), 'Make my key', 'the focus comes back');
    assert.equal((await probe(page)).screen, 'set-practice');
    const choosing = page.waitForEvent('filechooser');
    await byKeys(page).begin('button', 'Use my key file');
    await (await choosing).setFiles(file);
    await page.getByText('Your key is in use.').first().waitFor();
    await way.press('button', 'Make the link');
    await awaitScreen(page, 'set-link');
    const key = assignmentOf(await copied(way))[7];
    assert.equal(Buffer.from(key).toString('base64url'), JSON.parse(made.keyFile).publicKey);
    assert.equal(await page.evaluate(async () => JSON.stringify([{ ...localStorage }, { ...sessionStorage }, document.cookie,
      (await indexedDB.databases()).length])), '[{},{},"",0]', 'nothing of it is stored');
    assert.deepEqual(page.complaints, []);
  });
});

test('a run that is going on is not lost by a link; the link waits', async () => {
  let made;
  await app.with({ query: '#set', calm: true, context: k_clipboard }, async (page) => {
    made = await setPractice(byReader(page), { sealed: false });
  });
  await app.with({ query: '?seed=3&family=soft-mist', calm: true }, async (page) => {
    await awaitScreen(page, 'ready');
    await byReader(page).press('button', 'Start');
    const before = await page.evaluate(() => window.rehale.exportRun());
    await page.evaluate((link) => { location.hash = link; }, hash(made.link));
    await waitForIdle(page, { quiet: 500 });
    assert.equal((await probe(page)).screen, 'question');
    assert.equal(await page.evaluate(() => window.rehale.exportRun()), before);
    await page.reload();
    await awaitScreen(page, 'ready');
    assert.match(await page.getByRole('main').innerText(), /Your care team asks you/);
  });
});

describe('on paper', () => {
  const onPaper = async (page, button, name) => {
    const way = byReader(page);
    const { link } = await setPractice(way, { sealed: true });
    await way.press('button', button);
    await page.waitForFunction(() => window.printed === 1);
    mkdirSync(k_out, { recursive: true });
    const file = path.join(k_out, name);
    return { link, file };
  };
  const pdfOf = async (page, file, format) => {
    writeFileSync(`${file}.pdf`, await page.pdf({ format, preferCSSPageSize: false }));
    assert.match(execFileSync('pdfinfo', [`${file}.pdf`], { encoding: 'utf8' }), /Pages: +1\n/);
    execFileSync('pdftoppm', ['-r', '300', '-gray', '-png', '-singlefile', `${file}.pdf`, file]);
    return execFileSync('pdftotext', ['-layout', `${file}.pdf`, '-'], { encoding: 'utf8' });
  };
  // Each slip as an image of its own, as scissors leave it: margins of 8 mm, 3 by 10 slips 26.2 mm high (sheet.css).
  const k_dots_a_mm = 300 / 25.4;
  const cutUp = (file, format) => Array.from({ length: 30 }, (_, n) => {
    const width = ({ A4: 210, Letter: 215.9 }[format] - 16) / 3;
    const [x, y] = [8 + (n % 3) * width, 8 + Math.floor(n / 3) * 26.2];
    const place = [['-x', x], ['-y', y], ['-W', width], ['-H', 26.2]]
      .flatMap(([name, mm]) => [name, String(Math.round(mm * k_dots_a_mm))]);
    const slip = `${file}-${n + 1}`;
    execFileSync('pdftoppm', ['-r', '300', '-gray', '-png', '-singlefile', ...place, `${file}.pdf`, slip]);
    return `${slip}.png`;
  });
  const smallestOf = (page) => page.locator('#sheet *').evaluateAll((all) =>
    Math.min(...all.map((element) => parseFloat(getComputedStyle(element).fontSize))) * 72 / 96);

  for (const format of ['A4', 'Letter']) {
    test(`a sheet of 30 slips, ${format}: all read back to the link`, () =>
      app.with({ query: '#set', calm: true, context: k_clipboard, before: k_no_print, route: underPolicy }, async (page) => {
        const { link, file } = await onPaper(page, 'Print a sheet of 30 slips', `slips-${format}`);
        const smallest = await smallestOf(page);  // pdf() tells the page that printing is over
        const text = await pdfOf(page, file, format);
        for (const slip of cutUp(file, format)) assert.deepEqual(readByZbar(slip), [link], slip);
        assert.equal(text.match(/Name:/g).length, 30);
        assert.ok(smallest >= 10.99 && smallest < 20, `${smallest} pt`);
        assert.equal(await page.locator('#sheet').count(), 0);
        assert.deepEqual(page.complaints, []);
      }));

    test(`one slip, ${format}`, () =>
      app.with({ query: '#set', calm: true, context: k_clipboard, before: k_no_print }, async (page) => {
        const { link, file } = await onPaper(page, 'Print one slip', `slip-${format}`);
        const smallest = await smallestOf(page);
        const text = await pdfOf(page, file, format);
        assert.deepEqual(readByZbar(`${file}.png`), [link]);
        assert.match(text, /Check how you use your\s+inhaler/);
        assert.match(text, /Please do it by \d+ \w+ 20\d\d\./);
        assert.ok(smallest >= 10.99 && smallest < 20, `${smallest} pt`);
      }));
  }
});
