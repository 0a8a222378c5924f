// Makes the page work without a network, where the browser can: registers sw.js once the first screens stand, lets a
// new version take over only while the person is at the start, and goes back to the one before when this one does not
// start. Must not know what screens show.

const QUIET_MS = 5000;  // nobody has touched anything for so long
const UPDATE_MS = 3_600_000;
const SCRIPT = 'sw.js';

// The address is our own: this says so where the content policy wants it said.
function trusted(url) {
  const policy = globalThis.trustedTypes?.createPolicy('rehale', { createScriptURL: (text) => (text === SCRIPT ? text : '') });
  return policy ? policy.createScriptURL(url) : url;
}

const workers = () => navigator.serviceWorker;

function ask(worker, what, withinMs = 3000) {
  return new Promise((done) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => done(data);
    setTimeout(() => done(false), withinMs);
    worker.postMessage({ ask: what }, [port2]);
  });
}

// True: the version before stands again, load the page anew.
export async function goBack() {
  const worker = workers()?.controller;
  return worker ? await ask(worker, 'go back') === true : false;
}

export class Offline {
  // atStart(): nobody is in the middle of anything. told(text): 'yes' once it works without a network.
  constructor({ atStart, told }) {
    Object.assign(this, { atStart, told, begun: false, touched: 0 });
  }

  // When the first screens stand; once.
  async begin() {
    if (this.begun || !workers() || location.protocol === 'file:' || !globalThis.isSecureContext || navigator.connection?.saveData) return;
    this.begun = true;
    try {
      this.controlled = workers().controller !== null;
      const registration = await workers().register(trusted(SCRIPT), { updateViaCache: 'none' });
      workers().controller?.postMessage({ ask: 'started well' });
      this.watch(registration);
      await workers().ready;
      if (await ask(registration.active, 'keep', 120_000)) this.told('yes');
    } catch (error) {
      console.warn('not kept for use without a network:', String(error));  // full, or switched off: nothing is lost
    }
  }

  watch(registration) {
    for (const kind of ['pointerdown', 'keydown', 'wheel']) addEventListener(kind, () => { this.touched = performance.now(); }, { capture: true, passive: true });
    // Another version took over while this page stood at the start: begin with it.
    workers().addEventListener('controllerchange', () => {
      if (this.controlled && this.atStart()) location.reload();
      this.controlled = true;
    });
    registration.addEventListener('updatefound', () => {
      const fresh = registration.installing;
      fresh?.addEventListener('statechange', () => { if (fresh.state === 'installed') this.wait(registration); });
    });
    if (registration.waiting) this.wait(registration);
    setInterval(() => registration.update().catch(() => {}), UPDATE_MS);  // pages that are never closed
  }

  wait(registration) {
    clearInterval(this.timer);
    if (!this.controlled) return;  // the first one: nothing to take over from
    this.timer = setInterval(() => {
      const quiet = document.hidden || performance.now() - this.touched >= QUIET_MS;
      if (registration.waiting && quiet && this.atStart()) registration.waiting.postMessage({ ask: 'take over' });
    }, 1000);
  }
}
