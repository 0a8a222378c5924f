// Put into the page before it starts: goes through the app by its mirror, as fast as the page answers.
// A plain script; window.walk is all it leaves.
(() => {
  const element = (id) => document.querySelector(`#mirror [data-id="${CSS.escape(id)}"]`);
  const screen = () => window.rehale?.probe?.().screen ?? '';
  const frame = () => new Promise((done) => requestAnimationFrame(done));

  async function until(holds, what, within_ms = 20_000) {
    const end = performance.now() + within_ms;
    while (!holds()) {
      if (window.rehale?.problem) throw new Error(`the page has a problem: ${window.rehale.problem}`);
      if (performance.now() > end) throw new Error(`waited in vain for ${what} on '${screen()}'`);
      await frame();
    }
  }

  const settled = () => until(() => !window.rehale.probe().pending, 'rest');

  async function press(id) {
    await until(() => element(id), id);
    element(id).click();
    await settled();
  }

  async function to(name) { await until(() => screen() === name, `screen '${name}'`); await settled(); }

  // To the first question. Clicks as soon as there is something to click.
  async function begin(family) {
    const early = () => document.querySelector(`#early [data-family="${family}"]`);
    await until(() => early() ?? element(`devices/${family}`), 'the devices');
    if (early()) early().click();
    else await press(`devices/${family}`);
    await until(() => element('go'), 'go');  // nobody waits for the page to settle before they press
    element('go').click();
    await to('question');
  }

  // Answers until the result is there: a pick where there is something to pick, else "I'm not sure".
  async function answer_all(choose = () => -1) {
    for (let n = 0; screen() === 'question' && n < 40; n += 1) {
      const picks = document.querySelectorAll('#mirror input[type=radio], #mirror input[type=checkbox]');
      const choice = picks.length > 0 ? choose(n, picks.length) : -1;
      if (choice >= 0) {
        picks[choice].click();
        await settled();
        await press('next');
      } else {
        await press('unsure');
      }
    }
    await to('result');
  }

  window.walk = { begin, answer_all, press, to, until, settled, element, screen };

  // When the first question could be answered: what answers it stands there, and the frame that drew it is shown.
  const question_is_there = () => document.querySelector('#quiz input[type=radio]') ?? (screen() === 'question' && element('unsure'));
  // Looks only once it is asked for: looking is work, and some measure that there is none.
  let first;
  Object.defineProperty(window, 'firstQuestion', { get: () => (first ??= new Promise((done) => {
    const look = () => (question_is_there() ? requestAnimationFrame(() => done(performance.now()))
      : requestAnimationFrame(look));
    requestAnimationFrame(look);
  })) });
  window.longTasks = [];
  new PerformanceObserver((list) => window.longTasks.push(...list.getEntries().map(({ duration }) => duration)))
    .observe({ type: 'longtask', buffered: true });
})();
