// A browser's voices and speech, played: headless Chromium has the interface but no voice (users.md 6.1). It behaves
// as the Web Speech API draft says: one utterance at a time, the others wait; start, boundaries, end; cancel() empties
// the queue and tells 'canceled'. What was said stands in window.said, as it began.

// Init script. voices: [{lang, name, localService, default}]; word_ms: how long a word takes; silent: texts holding
// this never start (a stalled engine); late_ms: voices are known only then.
export function playVoices({ voices, word_ms = 5, silent = null, late_ms = 20 }) {
  window.said = [];
  window.cancels = 0;
  const listeners = [];
  let known = [], queue = [], timer;
  const tell = (utterance, name, more = {}) => utterance[`on${name}`]?.({ type: name, utterance, ...more });
  const next = () => {
    const utterance = queue[0];
    if (!utterance) return;
    if (silent !== null && utterance.text.includes(silent)) return;  // stalled until cancel()
    window.said.push({ text: utterance.text, lang: utterance.lang, voice: utterance.voice?.name, rate: utterance.rate, volume: utterance.volume });
    tell(utterance, 'start');
    let left = utterance.text.split(' ').length;
    const step = () => {
      left -= 1;
      if (left > 0) {
        tell(utterance, 'boundary', { name: 'word' });
        timer = setTimeout(step, word_ms);
        return;
      }
      queue.shift();
      const others = queue.length > 0;
      tell(utterance, 'end');
      if (others) next();
    };
    timer = setTimeout(step, word_ms);
  };
  const synthesis = {
    getVoices: () => known,
    addEventListener: (_, act) => listeners.push(act),
    removeEventListener: () => {},
    get speaking() { return queue.length > 0; },
    get pending() { return queue.length > 1; },
    paused: false, pause() {}, resume() {},
    speak(utterance) {
      queue.push(utterance);
      if (queue.length === 1) setTimeout(next, 0);
    },
    cancel() {
      window.cancels += 1;
      clearTimeout(timer);
      const gone = queue;
      queue = [];
      for (const utterance of gone) setTimeout(() => tell(utterance, 'error', { error: 'canceled' }), 0);
    },
  };
  Object.defineProperty(window, 'speechSynthesis', { configurable: true, value: synthesis });
  window.SpeechSynthesisUtterance = class { constructor(text) { Object.assign(this, { text, lang: '', rate: 1, volume: 1, voice: null }); } };
  window.setVoices = (now) => { known = now; listeners.forEach((act) => act()); };
  setTimeout(() => window.setVoices(voices), late_ms);
}

export const k_voices = [
  { name: 'far English', lang: 'en-GB', localService: false, default: true },
  { name: 'near English', lang: 'en-US', localService: true, default: false },
  { name: 'near British', lang: 'en_GB', localService: true, default: false },
  { name: 'near Spanish', lang: 'es-MX', localService: true, default: false },
];
