// Frames only when asked for: one animation frame or one timeout at a time, none while the page is
// hidden. Counts who asked (?debug, rehale.probe({causes: true})), and frames that took too long.

const LATE_MS = 50;

export class Loop {
  // draw(): one frame. wake(): a deadline has come. Clock and schedulers can be replaced for tests.
  constructor({ draw, wake, host = globalThis, page = globalThis.document }) {
    Object.assign(this, { draw, wake, host, page });
    this.frames = 0;
    this.late = 0;
    this.causes = new Map();
    this.pending = 0;
    this.owed = false;
    this.stopped = false;
  }

  askFrame(cause) {
    this.causes.set(cause, (this.causes.get(cause) ?? 0) + 1);
    if (this.stopped) return;
    if (this.page.hidden || this.blocked) {
      this.owed = true;
      return;
    }
    if (!this.pending) this.pending = this.host.requestAnimationFrame(() => this.tick());
  }

  tick() {
    this.pending = 0;
    if (this.stopped) return;
    if (this.page.hidden || this.blocked) {
      this.owed = true;
      return;
    }
    this.frames += 1;
    const from = this.host.performance.now();
    this.draw();
    if (this.host.performance.now() - from > LATE_MS) this.late += 1;
  }

  askWake(atMs) {
    this.host.clearTimeout(this.timer);
    if (this.stopped) return;
    this.timer = this.host.setTimeout(this.wake, Math.max(0, Math.ceil(atMs - this.host.performance.now())));
  }

  // Nothing can be drawn for a while (lost WebGL context).
  block(on) {
    this.blocked = on;
    if (!on) this.payOwed();
  }

  // The page can be seen again, or drawn again.
  payOwed() {
    if (!this.owed || this.page.hidden || this.blocked || this.stopped) return;
    this.owed = false;
    if (!this.pending) this.pending = this.host.requestAnimationFrame(() => this.tick());
  }

  stop() {
    this.stopped = true;
    this.host.cancelAnimationFrame(this.pending);
    this.host.clearTimeout(this.timer);
  }
}
