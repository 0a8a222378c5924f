// The dialog that reads QR codes by camera: the live picture, how many codes were read, a way to stop. The camera goes
// off with the dialog, and when the page is not seen. No picture is kept or sent. Must not know what a code says.

import { Watcher } from './find_codes.js';
import { bringStyle } from './style_sheet.js';

const PAUSE_MS = 100;      // between two looks
const SHOWN_MS = 700;      // that a code was read is also seen
const MOST_CODES = 5000;
// The one at the back, where there is one: it is pointed at things.
const WISH = { audio: false, video: { facingMode: { ideal: 'environment' }, width: { ideal: 1280 }, height: { ideal: 720 } } };
// Media Capture and Streams, getUserMedia: names of what went wrong -> what is said of it.
const WHY = { NotAllowedError: 'refused', SecurityError: 'refused', NotFoundError: 'none', OverconstrainedError: 'none' };

const pause = (ms) => new Promise((done) => { setTimeout(done, ms); });

function make(tag, facts = {}, children = []) {
  const element = Object.assign(document.createElement(tag), facts);
  element.append(...children);
  return element;
}

function makeDialog(words) {
  const video = make('video', { muted: true, playsInline: true, disablePictureInPicture: true });
  video.setAttribute('aria-hidden', 'true');
  const told = make('p', { id: 'scan-told', textContent: words.wait });
  told.setAttribute('role', 'status');
  const stop = make('button', { type: 'button', textContent: words.stop });
  const dialog = make('dialog', { id: 'scan' }, [
    make('h2', { id: 'scan-title', textContent: words.title }), make('p', { id: 'scan-lead', textContent: words.lead }),
    make('div', { className: 'seen' }, [video]), told, stop, make('p', { className: 'small', textContent: words.private })]);
  dialog.setAttribute('aria-labelledby', 'scan-title');
  dialog.setAttribute('aria-describedby', 'scan-lead');
  return { dialog, video, told, stop };
}

class Scan {
  constructor(words, done) {
    Object.assign(this, { words, done, texts: new Set(), ended: false, ...makeDialog(words) });
    this.watcher = new Watcher(this.video);
    this.hide = () => { if (document.hidden && this.stream) this.end(); };  // not while a system asks before it
  }

  open() {
    this.dialog.addEventListener('keydown', (event) => event.stopPropagation());  // they are not the page's (keys.js)
    for (const event of ['cancel', 'close']) this.dialog.addEventListener(event, () => this.end());  // the first is sooner
    this.stop.addEventListener('click', () => this.end());
    document.addEventListener('visibilitychange', this.hide);
    document.body.append(this.dialog);
    this.dialog.showModal();
    this.run();
  }

  // Once, however it comes about. why: a name of `words`, told when nothing was read.
  end(why) {
    if (this.ended) return;
    this.ended = true;
    document.removeEventListener('visibilitychange', this.hide);
    this.letGo();
    this.watcher.end();
    this.dialog.close();  // gives the focus back
    this.dialog.remove();
    this.done({ texts: [...this.texts], told: why ? this.words[why] : '' });
  }

  letGo() {
    this.stream?.getTracks().forEach((track) => track.stop());
    this.video.srcObject = null;
  }

  async run() {
    try {
      await this.watcher.prepare();
    } catch {
      return this.end('offline');
    }
    if (this.ended) return undefined;
    if (!navigator.mediaDevices?.getUserMedia) return this.end('not-here');
    try {
      this.stream = await navigator.mediaDevices.getUserMedia(WISH);
    } catch (error) {
      return this.end(WHY[error?.name] ?? 'busy');
    }
    if (this.ended) return this.letGo();  // the person stopped before they allowed it
    return this.watch().catch(() => this.end('busy'));
  }

  async watch() {
    const [track] = this.stream.getVideoTracks();
    track.addEventListener('ended', () => this.end('busy'));  // unplugged, or taken back
    if (track.getSettings?.().facingMode === 'user') this.video.className = 'mirrored';
    this.video.srcObject = this.stream;
    await this.video.play();
    this.told.textContent = this.words.ready;
    while (!this.ended) {
      for (const text of await this.watcher.look()) this.take(text);
      await pause(PAUSE_MS);
    }
  }

  take(text) {
    if (this.ended || this.texts.has(text) || this.texts.size >= MOST_CODES) return;
    this.texts.add(text);
    this.told.textContent = this.words.count.replace('{count}', String(this.texts.size));
    this.dialog.dataset.got = '';
    clearTimeout(this.timer);
    this.timer = setTimeout(() => { delete this.dialog.dataset.got; }, SHOWN_MS);
  }
}

// words: sentences by their names below desk/scan/ (assets/text). Resolves, once it is over, with the texts of all
// codes, each once, and what to tell of a camera that did not work ('': nothing).
export async function scanByCamera(words) {
  const { link, isHere } = bringStyle('./scan.css');
  await isHere.catch(() => {});  // plain, but it works
  const result = await new Promise((done) => { new Scan(words, done).open(); });
  link.remove();
  return result;
}
