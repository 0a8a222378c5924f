// Milliseconds from a choice on the desk's screens to its picture, and the same work by a plain page's script.
import { waitForIdle } from '../browser/support/browser.mjs';

const k_times = 10;

export function summary_of(times) {
  const sorted = [...times].sort((a, b) => a - b);
  const median = sorted[Math.floor(sorted.length / 2)];
  return { median, words: `${median.toFixed(0)} ms (${sorted.at(-1).toFixed(0)})` };
}

// From the press until the frame that draws the change has been told: the words of `watched` go to the mirror with it.
const choose = (radio, watched) => radio.evaluate((element, id) => new Promise((done) => {
  const words = () => document.querySelector(`#mirror [data-id="${id}"]`).textContent;
  const [before, began] = [words(), performance.now()];
  element.click();
  const look = () => (words() === before ? requestAnimationFrame(look) : done(performance.now() - began));
  requestAnimationFrame(look);
}), watched);

// wishes: name -> [one choice, another, what changes on the screen]. Back and forth, so that each press changes something.
export async function choose_times(way, wishes) {
  const { page } = way, times = {};
  await way.press('button', await page.getByRole('button', { name: /^Shown now/ }).innerText());
  for (const [name, [one, other, watched]] of Object.entries(wishes)) {
    times[name] = [];
    for (let n = 0; n < k_times; n += 1) {
      const radio = page.getByRole('radio', { name: n % 2 === 0 ? one : other, exact: true });
      times[name].push(await choose(radio, watched));
      await waitForIdle(page);
    }
  }
  await way.press('button', await page.getByRole('button', { name: /^Shown now/ }).innerText());
  return times;
}

// In the page: rows of CSV whose verdicts are there already; twenty of them on show.
function plain_script(csv, times) {
  const rows = csv.trim().split('\n').map((line) => line.trim().replaceAll('"', '').split(',')).filter(([day]) => day !== 'x');
  const list = document.body.appendChild(document.createElement('ol'));
  const show = (some) => list.replaceChildren(...some.slice(0, 20).map((row) => Object.assign(document.createElement('li'), { textContent: row.join(' ') })));
  const lacking = (some) => Array.from({ length: 12 }, (_, at) => some.filter((row) => row[8 + at] === '0').length);
  const tasks = {
    'sort': () => show([...rows].sort(([a], [b]) => (a < b ? 1 : a > b ? -1 : 0))),
    'filter and count what is lacking': () => {
      const some = rows.filter((row) => row[2] === 'pt');
      list.dataset.lacking = lacking(some);
      show(some);
    },
  };
  const drawn = () => new Promise((done) => { requestAnimationFrame(() => setTimeout(done)); });
  const measure = async (task) => {
    const began = performance.now();
    task();
    await drawn();
    return performance.now() - began;
  };
  return (async () => {
    const found = {};
    for (const [name, task] of Object.entries(tasks)) {
      found[name] = [];
      for (let n = 0; n < times; n += 1) found[name].push(await measure(task));
    }
    return { rows: rows.length, found };
  })();
}

export async function plain_times(browser, csv) {
  const page = await browser.newPage();
  const { rows, found } = await page.evaluate(`(${plain_script})(${JSON.stringify(csv)}, ${k_times})`);
  await page.close();
  return Object.fromEntries(Object.entries(found).map(([name, times]) => [`${name}, of ${rows} rows`, times]));
}
