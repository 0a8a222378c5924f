// Reads the mirror aloud with the browser's own voices: local ones only, sentence by sentence. Never begins by
// itself. Loaded after the first screen stands (aloud.js). Must not know WASM.

import { passagesOf, piecesOf, placeOf, sentencesOf } from './read_aloud_words.js';

// Browsers' voices stall: no sign of life for so long, and the next sentence's turn comes (users.md 6.1).
const STALL_MS = 8000, STALLS_MOST = 3;
const LETTER_MS = 100;  // a voice that tells of no words: so much time a letter before it counts as stalled
const RATE = 0.9, SLOW_RATE = 0.7;
const VOLUMES = { medium: 0.5, quiet: 0.25 };  // 6 and 12 dB below the loudest (users.md 3)
const BREATHE_MS = 60;  // speak() right after cancel() is lost in some browsers

const primary = (tag) => tag.toLowerCase().split(/[-_]/)[0];

// Local voices only: others need the network, and send what is read to a stranger.
export const localVoices = (synthesis) => synthesis.getVoices().filter((voice) => voice.localService && voice.lang);

// The reader's own region goes first, then the device's default, then any.
export function voiceFor(voices, language, wishes = []) {
  const fit = voices.filter((voice) => primary(voice.lang) === primary(language));
  const regions = wishes.filter((wish) => primary(wish) === primary(language)).map((wish) => wish.toLowerCase());
  const rank = (voice) => {
    const at = regions.indexOf(voice.lang.toLowerCase().replace('_', '-'));
    return at >= 0 ? at : regions.length + (voice.default ? 0 : 1);
  };
  return fit.sort((a, b) => rank(a) - rank(b))[0];
}

export class Reader {
  constructor({ frame, told, host }) {
    Object.assign(this, { frame, told, host, synthesis: host.speechSynthesis, queue: [], speaking: false, languages: null });
    this.synthesis.addEventListener?.('voiceschanged', () => this.lookForVoices());
    host.addEventListener?.('pagehide', () => this.stop());
    host.document?.addEventListener('visibilitychange', () => { if (host.document.hidden) this.stop(); });
    this.lookForVoices();
  }

  lookForVoices() {
    const languages = [...new Set(localVoices(this.synthesis).map((voice) => primary(voice.lang)))].sort().join(' ');
    if (languages === this.languages || (this.languages === null && languages === '')) return;
    this.languages = languages;
    this.told(languages, this.speaking);
  }

  tell(speaking) {
    if (speaking === this.speaking) return;
    this.speaking = speaking;
    this.told(this.languages ?? '', speaking);
  }

  // wish: "stop"; else words: "slowly", "medium" or "quiet", "all" (pictures' descriptions and progress, too).
  read(wish) {
    const after_ms = this.utterance ? BREATHE_MS : 0;
    this.stop();
    if (wish === 'stop' || !this.begin(wish)) return;
    this.queue = passagesOf(this.frame(), wish.split(' ').includes('all')).flatMap(sentencesOf);
    if (this.queue.length === 0) return;
    this.tell(true);
    this.goOn(after_ms);
  }

  // A few words of their own, which cut off what is being read.
  say(text, wish) {
    this.stop();
    if (!this.begin(wish)) return;
    this.queue = piecesOf(text);
    this.goOn(BREATHE_MS);
  }

  // Is there a voice for it?
  begin(wish) {
    this.voice = voiceFor(localVoices(this.synthesis), this.frame().language, this.host.navigator?.languages);
    const words = wish.split(' ');
    this.rate = words.includes('slowly') ? SLOW_RATE : RATE;
    this.volume = VOLUMES[words.find((word) => VOLUMES[word])] ?? 1;
    this.place = this.here();
    Object.assign(this, { stalls: 0, tellsWords: false });
    return this.voice !== undefined;
  }

  here() { return placeOf(this.frame()); }

  // A new screen, a dialog opened or shut, another language: what is read is not there any more.
  changed() {
    if (this.speaking && this.here() !== this.place) this.stop();
  }

  stop() {
    this.queue = [];
    this.finish();
    this.synthesis.cancel();
    this.tell(false);
  }

  finish() {
    this.host.clearTimeout(this.timer);
    this.utterance = undefined;  // its events mean nothing any more
  }

  sayNext() {
    const text = this.queue.shift();
    if (text === undefined) return this.tell(false);
    const utterance = new this.host.SpeechSynthesisUtterance(text);
    Object.assign(utterance, { voice: this.voice, lang: this.voice.lang, rate: this.rate, volume: this.volume });
    this.utterance = utterance;  // held: browsers forget it otherwise, and never tell the end
    const mine = (act) => () => { if (this.utterance === utterance) act(); };
    utterance.onstart = mine(() => this.watch(text));
    utterance.onboundary = mine(() => { this.tellsWords = true; this.watch(text); });
    utterance.onend = mine(() => { this.stalls = 0; this.goOn(0); });
    utterance.onerror = mine(() => this.stalled());
    this.watch(text);
    this.synthesis.speak(utterance);
  }

  watch(text) {
    this.host.clearTimeout(this.timer);
    const patience = STALL_MS + (this.tellsWords ? 0 : text.length * LETTER_MS / this.rate);
    this.timer = this.host.setTimeout(() => this.stalled(), patience);
  }

  stalled() {
    this.stalls += 1;
    if (this.stalls >= STALLS_MOST) return this.stop();
    this.finish();
    this.synthesis.cancel();
    this.goOn(BREATHE_MS);
  }

  goOn(after_ms) {
    this.finish();
    if (after_ms === 0) return this.sayNext();
    this.timer = this.host.setTimeout(() => this.sayNext(), after_ms);
  }
}
