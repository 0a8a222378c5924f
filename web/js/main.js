// Entry: puts the parts together and starts the app. A table of contents; the parts decide.

import { Aloud } from './aloud.js';
import { answerAsk, listenForLinks, takeAsk } from './asked.js';
import { Bridge, SEPARATOR } from './bridge.js';
import { showDebug } from './debug.js';
import { fetchBytes } from './fetch_text.js';
import { keep, readKept } from './kept.js';
import { listenToKeys, watchInputKind } from './keys.js';
import { makeAnnouncer } from './live.js';
import { Later } from './later.js';
import { loadFonts, loadModule } from './load.js';
import { Loop } from './loop.js';
import { MirrorActions } from './mirror_actions.js';
import { MirrorFocus } from './mirror_focus.js';
import { Mirror } from './mirror.js';
import { Offline, goBack } from './offline.js';
import { openPageApi } from './page_api.js';
import { Painter } from './painter.js';
import { PointerInput } from './pointer.js';
import { readPreferences, watchPreferences } from './preferences.js';
import { kindOfCrash, kindOfStart, showProblem } from './problems.js';
import { watchSize } from './stage.js';

const CONTEXT_BACK_WITHIN_MS = 8000;
const byId = (id) => document.getElementById(id);
const options = new URLSearchParams(location.search);
const later = new Later(LATER_FILE && window.rehale.base + LATER_FILE);  // ci/lib/bundle.mjs names it

let size, nextFrame, painter, checkSize, filesToCome = 0, kiosk;

const mirror = new Mirror(byId('mirror'), byId('mirror-notes'));
const announce = makeAnnouncer(byId('polite'), byId('urgent'));
const pointer = new PointerInput({
  send: (what, kind, x, y) => bridge.call('pointer', what, kind, x, y),
  sendWheel: (notches) => bridge.call('wheel', notches),
});
const actions = new MirrorActions(mirror, {
  press: (id) => bridge.hear('press', id),
  setNumber: (id, number) => bridge.hear('setNumber', id, number),
  pointer,
});
const focus = new MirrorFocus(mirror, {
  told: (id, byKeyboard) => {
    bridge.hear('focus', id, byKeyboard ? 1 : 0);
    kiosk?.speech.moved(id, byKeyboard);
  },
  // A finger's focus comes after its release, when the frame that shows the press may still be to come.
  isByPointer: () => pointer.recent && document.documentElement.dataset.keys === undefined,
});

const aloud = new Aloud({
  frame: () => mirror.frame,
  told: (languages, speaking) => bridge.hear('voice', languages, speaking ? 1 : 0),
});

const offline = new Offline({
  atStart: () => ['choose-device', 'kiosk'].includes(mirror.frame.screen) && bridge.text('export_run') === '',
  told: (yes) => bridge.hear('option', `#offline=${yes}`),
});

// What C++ says. The mirror waits until its frame is over: changing the page may call C++ again.
const bridge = new Bridge({
  crashed: (error) => stop(() => showProblem(kindOfCrash(error), error)),
  handlers: {
    askFrame: (cause) => loop.askFrame(cause),
    askWake: (_, atMs) => loop.askWake(atMs),
    mirror: (text) => { nextFrame = JSON.parse(text); },
    focus: (id) => focus.want(id),
    announce: (text, urgent) => {
      announce(text, urgent === 1);
      kiosk?.speech.announced(text);
    },
    reload: () => location.reload(),
    noMemory: () => stop(() => showProblem('memory')),
    fetch: (path, ticket) => answerFetch(path, ticket),
    ask: (text, ticket) => answerAsk(bridge, text, ticket, { keep, read: (wish) => aloud.read(wish), ...kiosk?.services }),
    stop: (text) => {
      const [title, detail] = text.split(SEPARATOR);
      stop(() => window.rehale.showProblem(title, detail));
    },
  },
});

const loop = new Loop({
  wake: () => bridge.call('wake'),
  draw: () => {
    checkSize();
    bridge.call('frame');
    if (!bridge.alive) return;
    const frame = nextFrame;
    nextFrame = undefined;
    focus.during(() => { if (frame) mirror.update(frame); });
    if (!loop.pending) actions.settle();
    if (frame) { takeOverFromBoot(frame); aloud.changed(); kiosk?.speech.changed(); }
    if (!loop.pending && filesToCome === 0) rest();
  },
});

// The app's first screen takes the place of boot.js's. A device that was picked too late for the start is picked here.
function takeOverFromBoot({ screen }) {
  const skeleton = byId('skeleton'), { picked } = window.rehale;
  skeleton?.remove();
  if (skeleton && picked && screen === 'choose-device') document.querySelector(`#mirror [data-id="devices/${picked}"]`)?.click();
}

function tellPicked() { if (window.rehale.picked) bridge.hear('option', `family=${window.rehale.picked}`); }

// The first screens stand: now what few need, or only later.
function rest() {
  aloud.get();
  later.get().then(() => { if (later.state === 'here') offline.begin(); });
}

function stop(tell) {
  loop.stop();
  bridge.alive = false;
  tell();
}

// Files that came early are read one after another: each in a task of its own, so that a tap in between is heard.
const breathe = () => globalThis.scheduler?.yield?.() ?? new Promise((done) => { setTimeout(done); });

async function answerFetch(path, ticket) {
  filesToCome += 1;
  try {
    const bytes = await fetchBytes(path);
    await breathe();
    bridge.hear('fetched', bytes, ticket);
  } catch (error) {
    bridge.hear('fetchFailed', [error.code ?? 'network', path, error.detail ?? String(error)].join(SEPARATOR), ticket);
  } finally {
    filesToCome -= 1;
  }
}

function redraw(cause, frames = 3) { bridge.hear('redraw', cause, frames); }

function openPainter() {
  let timer;
  const giveUp = () => {
    if (document.hidden) timer = setTimeout(giveUp, CONTEXT_BACK_WITHIN_MS);  // it comes back when seen
    else stop(() => showProblem('gone', 'WebGL context lost, not restored'));
  };
  painter = new Painter(byId('canvas'), {
    onLost: () => {
      loop.block(true);
      timer = setTimeout(giveUp, CONTEXT_BACK_WITHIN_MS);
    },
    onBack: () => {
      clearTimeout(timer);
      bridge.call('context_back');
      loop.block(false);
      redraw('context back');
    },
  });
}

function page() {
  return {
    tell: (...parts) => bridge.tell(...parts),
    random: randomWhole,
    today: () => Math.floor(Date.now() / 86_400_000 - new Date().getTimezoneOffset() / 1440),
    texture: (...parts) => painter.texture(...parts),
    forgetTexture: (id) => painter.forgetTexture(id),
    drawBegin: (width, height) => painter.drawBegin(size.pixels, width, height),
    drawList: (...parts) => painter.drawList(...parts),
    drawCall: (...parts) => painter.drawCall(...parts),
  };
}

function randomWhole() {
  const [high, low] = crypto.getRandomValues(new Uint32Array(2));
  return (high >>> 11) * 2 ** 32 + low;
}

function tellOfLink() {
  bridge.hear('option', `#${takeAsk().join('=')}`);
  // From a disk there is no address that others could open: codes go alone.
  const fromDisk = location.protocol === 'file:';
  bridge.hear('option', `#address=${fromDisk ? '' : location.href.replace(/[?#].*/s, '')}`);
  if (fromDisk) bridge.hear('option', '#offline=file');
  bridge.hear('option', `#build=${window.rehale.buildId}`);
  bridge.hear('option', `#settings=${readKept('settings')}`);
  bridge.hear('option', `#kiosk-settings=${readKept('kiosk')}`);
  bridge.hear('option', `#counted=${readKept('counted', undefined, 8000)}`);
  listenForLinks(() => bridge.text('export_run') !== '');
}

function tellSize() { bridge.call('viewport', size.width, size.height, size.density); }

function tellPreferences() {
  const { flags, rootFontPx, languages } = readPreferences();
  bridge.call('preferences', flags, rootFontPx);
  bridge.hear('language', languages);
}

function listen() {
  checkSize = watchSize(byId('stage'), (now) => { size = now; tellSize(); redraw('resize'); });
  watchPreferences(byId('rem'), () => { tellPreferences(); redraw('preferences'); });
  document.addEventListener('visibilitychange', () => {
    if (!document.hidden) { redraw('visible'); loop.payOwed(); }
  });
  window.addEventListener('pageshow', (event) => { if (event.persisted) redraw('page shown'); });
  pointer.listen(byId('stage'));
  watchInputKind();
  listenToKeys({
    dismiss: () => bridge.hear('dismiss', mirror.modal),
    scroll: (px) => bridge.hear('scroll', '', px),
  });
}

// A shared device: its part of the page comes first, so that nobody's first touch is missed.
async function startKiosk() {
  window.rehale.plain = () => import('./later/kiosk_plain.js').then(({ showPlain }) => showPlain(byId('problem'), mirror.frame.language));
  const { openKiosk } = await import('./later/kiosk.js');
  kiosk = openKiosk({
    touched: (times) => bridge.hear('option', `#touched=${times}`),
    heapBytes: () => bridge.heapBytes, lateFrames: () => loop.late, stage: byId('stage'), mirror, reader: () => aloud.reader,
  });
}

async function start() {
  if (location.hash === '#kiosk') startKiosk().catch((error) => console.warn('not all of a shared device is here:', String(error)));
  try {
    openPainter();
  } catch (error) {
    return showProblem('webgl', error);
  }
  const fonts = loadFonts();
  fonts.catch(() => {});  // told below, after the module
  const wasm = await loadModule(page(), later, {
    onAbort: (what) => stop(() => showProblem(kindOfCrash(what), what)),
    onPrint: (text) => console.warn(text),
  });
  bridge.connect(wasm);
  const [regular, bold] = await fonts;
  bridge.hear('fontRegular', regular);
  bridge.hear('fontBold', bold);
  // Names with '#' are ours: what only stands in the address shall not pass for what the page tells.
  for (const [name, value] of options) if (!name.startsWith('#')) bridge.hear('option', `${name}=${value}`);
  tellPicked();
  window.rehale.onPick = tellPicked;
  tellOfLink();
  tellPreferences();
  listen();
  bridge.call('start');
  window.rehale.started = true;
}

window.rehale.stop = () => stop(() => {});
openPageApi({ bridge, loop, mirror, later, painter: () => painter });
if (options.has('debug')) showDebug({ loop, mirror });
start().catch(async (error) => {
  if (await goBack().catch(() => false)) return location.reload();
  return stop(() => showProblem(kindOfStart(error), error));
});
