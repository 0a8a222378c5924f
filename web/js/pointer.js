// One pointer for the app: the first finger, the mouse or the pen. Other fingers, and the second tap of a
// trembling hand on the same place, go nowhere. Must not know what lies under it.

const MOVE = 0, DOWN = 1, UP = 2, CANCEL = 3, LEAVE = 4;  // twin of PointerEvent in host_state.h
const KINDS = { mouse: 0, touch: 1, pen: 2 };             // twin of Pointer::Kind in host.h
export const ECHO_MS = 400, ECHO_PX = 24;
const LINE_PX = 40, PX_PER_NOTCH = 100;

export class PointerInput {
  // send(event, kind, x, y), sendWheel(notches up).
  constructor({ send, sendWheel, now = () => performance.now() }) {
    Object.assign(this, { send, sendWheel, now });
    this.active = null;    // id of the pointer that is down
    this.lastTap = { at: -Infinity, x: 0, y: 0 };
    this.lastUp = -Infinity;  // any pointer, also those that were dropped
  }

  // Did a pointer act a moment ago? Then a click is its echo, and not of a keyboard or a reader.
  get recent() { return this.active !== null || this.now() - this.lastUp < 500; }

  isEcho(event) {
    const { at, x, y } = this.lastTap;
    return this.now() - at < ECHO_MS && Math.hypot(event.clientX - x, event.clientY - y) <= ECHO_PX;
  }

  tell(what, event) { this.send(what, KINDS[event.pointerType] ?? 0, event.clientX, event.clientY); }

  down(event) {
    if (this.active !== null || event.button !== 0) return;
    this.lastUp = this.now();
    if (this.isEcho(event)) return;
    this.active = event.pointerId;
    this.from = { x: event.clientX, y: event.clientY };
    this.tell(MOVE, event);
    this.tell(DOWN, event);
  }

  move(event) {
    const hovers = this.active === null && event.pointerType !== 'touch';
    if (hovers || event.pointerId === this.active) this.tell(MOVE, event);
  }

  up(event) {
    this.lastUp = this.now();
    if (event.pointerId !== this.active || event.button !== 0) return;
    this.active = null;
    const stayed = Math.hypot(event.clientX - this.from.x, event.clientY - this.from.y) <= ECHO_PX;
    if (stayed) this.lastTap = { at: this.now(), x: event.clientX, y: event.clientY };
    this.tell(MOVE, event);
    this.tell(UP, event);
  }

  cancel(event) {
    if (event.pointerId !== this.active) return;
    this.active = null;
    this.lastUp = this.now();
    this.tell(CANCEL, event);
  }

  // The window lost the pointer, or the page the window.
  drop() {
    if (this.active !== null) this.send(CANCEL, KINDS.mouse, 0, 0);
    this.active = null;
  }

  leave(event) {
    if (this.active === null && event.pointerType !== 'touch') this.tell(LEAVE, event);
  }

  wheel(event) {
    if (event.ctrlKey) return;  // the browser's own zoom
    event.preventDefault();
    const unit = [1, LINE_PX, window.innerHeight][event.deltaMode] ?? 1;
    if (event.deltaY) this.sendWheel(-event.deltaY * unit / PX_PER_NOTCH);
  }

  // Moves and releases are heard on the window: a press may end anywhere.
  listen(stage) {
    stage.addEventListener('pointerdown', (event) => this.down(event));
    window.addEventListener('pointermove', (event) => this.move(event));
    window.addEventListener('pointerup', (event) => this.up(event));
    window.addEventListener('pointercancel', (event) => this.cancel(event));
    window.addEventListener('blur', () => this.drop());
    document.documentElement.addEventListener('pointerleave', (event) => this.leave(event));
    stage.addEventListener('wheel', (event) => this.wheel(event), { passive: false });
    stage.addEventListener('contextmenu', (event) => {  // a long press is a press
      if (!event.target.closest?.('a, input')) event.preventDefault();
    });
  }
}
