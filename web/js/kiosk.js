// A shared device (#kiosk): tells the app of every touch, four keys are enough, the picture wanders a little so that it
// does not burn in, and what staff ask for. Loaded with the page where the address asks for it. What it keeps in this tab
// is how often people came and how often something failed. Must not know what anybody answered.

import './key_dialog.css';
import './kiosk.css';
import { KioskSpeech } from './kiosk_speech.js';
import { askCode } from './staff_code.js';

const SHIFT_EVERY_MS = 60_000, SHIFT_MOST_PX = 3;
const HEALTH = 'rehale.health';  // {since, visits, late, failed, recent: [ms]}; boot.js writes the last two

export function readHealth(storage = sessionStorage) {
  const none = { since: Date.now(), visits: 0, late: 0, failed: 0 };
  try {
    return { ...none, ...JSON.parse(storage.getItem(HEALTH) ?? '{}') };
  } catch {
    return none;
  }
}

function note(what, more) {
  const health = readHealth();
  health[what] += more;
  try {
    sessionStorage.setItem(HEALTH, JSON.stringify(health));
  } catch { /* switched off: not counted */ }
}

// Up and left: the control before; down and right: the next one; on a number up and down are more and less. Enter also
// chooses and ticks: a keypad of four keys has no space bar. Escape is the page's own where a dialog is open; else it
// says again what was said, and at the start it turns that on.
const STEPS = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 };
const CONTROLS = 'button:not([disabled]), a[href], input:not([disabled])';

export function stepFocus(event, root) {
  const step = STEPS[event.key];
  if (!step || event.target.closest?.('dialog')) return false;
  if (event.target.type === 'number' && /Up|Down/.test(event.key)) return false;  // more and less
  const inside = root.querySelector('[role=dialog]') ?? root;
  const controls = [...inside.querySelectorAll(CONTROLS)].filter((control) => !control.closest('[inert]'));
  if (controls.length === 0) return false;
  const at = controls.indexOf(event.target);
  controls[(at + step + controls.length + (at < 0 && step < 0 ? 1 : 0)) % controls.length].focus();
  return true;
}

export function chooseByEnter({ key, target, repeat }) {
  if (key !== 'Enter' || !target.matches?.('input[type=radio], input[type=checkbox]')) return false;
  if (!repeat) target.click();
  return true;
}

export function sayAgain({ key, target, repeat }, speech, mirror) {
  const { screen, nodes } = mirror.frame;
  if (key !== 'Escape' || target.closest?.('dialog') || nodes.some(({ role }) => role === 'dialog')) return false;
  const start = screen === 'kiosk' && mirror.element('aloud');
  if (!speech.on && !start) return false;
  if (repeat) return true;
  if (speech.on) speech.again();
  else start.click();
  return true;
}

function listenToPad(mirror, speech) {
  const answers = [(event) => stepFocus(event, mirror.root), chooseByEnter, (event) => sayAgain(event, speech, mirror)];
  addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.altKey || event.metaKey || !answers.some((answer) => answer(event))) return;
    event.preventDefault();
    event.stopPropagation();
  }, true);
}

function wander(stage) {
  let turn = 0;
  setInterval(() => {
    turn = (turn + 1) % 8;
    const angle = (turn / 8) * 2 * Math.PI;
    stage.style.transform = `translate(${Math.round(SHIFT_MOST_PX * Math.cos(angle))}px, ${Math.round(SHIFT_MOST_PX * Math.sin(angle))}px)`;
  }, SHIFT_EVERY_MS);
}

// touched(n): a number that is never the same twice; heapBytes(): of the app; lateFrames(): of this page, so far;
// reader(): of aloud.js. Gives what the app may
// ask for, and the speech, which wants to hear of the focus and of the mirror.
export function openKiosk({ touched, heapBytes, lateFrames, stage, mirror, reader }) {
  note('visits', 1);
  addEventListener('pagehide', () => note('late', lateFrames()));
  const speech = new KioskSpeech({ frame: () => mirror.frame, reader });
  let touches = 0;
  for (const kind of ['pointerdown', 'keydown', 'wheel']) {
    addEventListener(kind, () => touched(touches += 1), { capture: true, passive: true });
  }
  listenToPad(mirror, speech);
  addEventListener('contextmenu', (event) => event.preventDefault());
  wander(stage);
  const services = {
    kioskStaff: (words) => askCode(words.split('\n')),
    kioskHealth: () => {
      const { since, visits, late, failed } = readHealth();
      const all = [(Date.now() - since) / 60_000, heapBytes() / 1_048_576, visits, late + lateFrames(), failed];
      return all.map((each) => Math.max(0, Math.round(each))).join('\n');
    },
    kioskSpeech: (lines) => speech.use(lines),
  };
  return { services, speech };
}
