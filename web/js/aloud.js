// Reading aloud as the app sees it: its script (read_aloud.js) is fetched once the first screen stands, and
// only where the browser can speak at all. Must not know what is read.

export class Aloud {
  // frame() -> what the mirror shows; told(languages, speaking): what can be read, and whether it is.
  // fetchReader: for tests.
  constructor({ frame, told, fetchReader = () => import('./later/read_aloud.js'), host = globalThis }) {
    Object.assign(this, { frame, told, fetchReader, host, asked: false, reader: undefined });
  }

  async get() {
    if (this.asked || !this.host.speechSynthesis) return;
    this.asked = true;
    try {
      const { Reader } = await this.fetchReader();
      this.reader = new Reader({ frame: this.frame, told: this.told, host: this.host });
    } catch {
      this.asked = false;  // not arrived: again at the next rest
    }
  }

  // As read_aloud.js takes it.
  read(wish) {
    this.reader?.read(wish);
    return '';
  }

  changed() { this.reader?.changed(); }
}
