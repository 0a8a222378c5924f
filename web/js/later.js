// The second part of the WASM module (ci/lib/first_part.mjs cuts it off): fetched when the first screens
// stand. A function of it that is called before waits for it, and the page with it. Retries for as
// long as the page lives. Must not know what the functions do.

const RETRY_MS = 5000;

export class LaterError extends Error {}

export class Later {
  // file: '' when all is in the first part. host: for tests.
  constructor(file, host = globalThis) {
    Object.assign(this, { file, host, state: file ? 'to come' : 'here', waits: 0, started: false });
  }

  // What the first part imports: for each missing function one that gets it first.
  imports(imports) {
    const later = new Proxy({}, {
      get: (_, slot) => (...values) => {
        this.getNow();
        return this.table.get(Number(slot))(...values);
      },
    });
    return { ...imports, later };
  }

  // exports: of the first part.
  connect(exports) {
    this.first = exports;
    this.table = Object.values(exports).find((each) => each instanceof WebAssembly.Table);
  }

  // Once; goes on by itself when it does not arrive.
  async get() {
    if (this.started || this.state === 'here') return;
    this.started = true;
    try {
      const response = await this.host.fetch(this.file);
      if (!response.ok) throw new LaterError(`the server answered ${response.status}`);
      const module = await WebAssembly.compile(await response.arrayBuffer());
      if (this.state === 'here') return;
      await WebAssembly.instantiate(module, { first: this.first });  // puts its functions into the table
      this.state = 'here';
    } catch {
      this.started = false;
      this.host.setTimeout(() => this.get(), RETRY_MS);
    }
  }

  // The same, but nothing else happens until it is there.
  getNow() {
    if (this.state === 'here') return;
    this.waits += 1;
    const request = new this.host.XMLHttpRequest();
    request.open('GET', this.file, false);
    request.overrideMimeType('text/plain; charset=x-user-defined');  // bytes as letters
    try {
      request.send();
    } catch (error) {
      throw new LaterError(`${this.file}: ${error.message}`);
    }
    if (request.status !== 200) throw new LaterError(`${this.file}: the server answered ${request.status}`);
    const bytes = Uint8Array.from(request.responseText, (letter) => letter.charCodeAt(0) & 0xff);
    new WebAssembly.Instance(new WebAssembly.Module(bytes), { first: this.first });
    this.state = 'here';
  }
}
