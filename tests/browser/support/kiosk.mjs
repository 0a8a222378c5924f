// People at a shared device, one after another, as fast as the page goes: for kiosk_test.mjs and ci/soak. Works the
// mirror from inside the page, since a visit is some thirty presses.
import { probe } from './browser.mjs';

// What a shared device may keep, and nothing else (web/js/kiosk.js, staff_code.js; web/screens/kiosk_state.cpp).
export const k_may_stay = ['rehale.counted', 'rehale.kiosk', 'rehale.staff', 'rehale.health'];

// One check from the start to the code to scan. Resolves to how many questions there were.
async function visitInPage([family, turn]) {
  const tick = () => new Promise((done) => { requestAnimationFrame(() => setTimeout(done)); });
  const all = (selector) => [...document.querySelectorAll(`#mirror ${selector}`)];
  const press = async (element) => { element.click(); await tick(); await tick(); };
  const pressNamed = async (name) => {
    const found = () => all('button').find((one) => one.textContent === name);
    for (let n = 0; n < 900 && !found(); n += 1) await tick();  // content may be on its way
    if (!found()) throw new Error(`no button '${name}' on '${document.title}': ${document.querySelector('#mirror')?.innerText.slice(0, 300)}`);
    await press(found());
  };
  await pressNamed('Start');
  await pressNamed(family);
  await pressNamed('Start');
  let answered = 0;
  for (; document.title === 'Question' && answered < 20; answered += 1) {
    const choices = all('input[type=radio], input[type=checkbox]');
    if (choices.length > 0) await press(choices[(turn + answered) % choices.length]);
    await pressNamed(choices.length > 0 ? 'Next' : "I'm not sure");
  }
  await pressNamed('Show my result');
  await pressNamed('Show this to your pharmacist or nurse');
  for (let n = 0; n < 300 && !all('[role=img]').length; n += 1) await tick();
  return answered;
}

export const visit = (page, family, turn) => page.evaluate(visitInPage, [family, turn]);

// "I am done": the page begins anew. Resolves to how long it took until the start stands, in ms.
export async function leave(page) {
  await page.evaluate(async () => {
    const tick = () => new Promise((done) => { requestAnimationFrame(() => setTimeout(done)); });
    const pressNamed = async (name) => {
      const found = () => [...document.querySelectorAll('#mirror button')].find((one) => one.textContent === name);
      for (let n = 0; n < 300 && !found(); n += 1) await tick();
      found().click();
    };
    await pressNamed('Back to your result');
    window.is_old = true;
    await tick();
    await tick();
    setTimeout(() => pressNamed('I am done'));
  });
  const begun = Date.now();
  await atStart(page);
  return Date.now() - begun;
}

export async function atStart(page, within_ms = 20_000) {
  const end = Date.now() + within_ms;
  const stands = () => page.evaluate(() => !window.is_old && window.rehale?.started && !window.rehale.problem
    && window.rehale.probe().screen === 'kiosk' && document.querySelector('#mirror h1') !== null);
  while (!await stands().catch(() => false)) {  // the page is being loaded anew: asked again
    if (Date.now() > end) throw new Error(`not at the start: ${JSON.stringify(await probe(page))}`);
    await page.waitForTimeout(20);
  }
}

// All that this browser keeps for the page: names and texts.
export const kept = (page) => page.evaluate(async () => ({
  storage: [...Object.entries({ ...localStorage }), ...Object.entries({ ...sessionStorage })],
  databases: (await indexedDB.databases()).map(({ name }) => name),
  cookies: document.cookie,
  state: history.state,
  address: location.href,
  run: window.rehale.exportRun(),
  past: history.length,
}));

// Memory after a collection, elements and listeners, by the browser's own count.
export async function held(session) {
  await session.send('HeapProfiler.collectGarbage');
  const { metrics } = await session.send('Performance.getMetrics');
  const of = (name) => metrics.find((each) => each.name === name).value;
  return { heap: of('JSHeapUsedSize'), nodes: of('Nodes'), listeners: of('JSEventListeners'), documents: of('Documents') };
}

// Before the page: how long each of its frames kept the processor, in window.framesMs.
export function timeFrames() {
  window.framesMs = [];
  const draw = window.requestAnimationFrame.bind(window);
  window.requestAnimationFrame = (go) => draw((at) => {
    const from = performance.now();
    go(at);
    window.framesMs.push(performance.now() - from);
  });
}
