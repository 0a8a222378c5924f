// Where the keyboard's focus is and goes: to the heading of a new screen, to where C++ asks, and never
// lost when what had it is moved or gone. Must not know WASM.

export class MirrorFocus {
  // told(id, byKeyboard) at every change; isByPointer(): a press gives the focus, not the keyboard.
  constructor(mirror, { told, isByPointer }) {
    Object.assign(this, { mirror, told, isByPointer });
    this.last = '';      // what C++ knows
    this.wanted = '';    // asked for by C++, not there yet
    this.updating = false;
    mirror.root.addEventListener('focusin', () => this.tell());
    mirror.root.addEventListener('focusout', (event) => {
      const stays = this.mirror.root.contains(event.relatedTarget);
      if (!stays && document.hasFocus()) this.tell('');
    });
  }

  now() { return this.mirror.root.contains(document.activeElement) ? this.mirror.idOf(document.activeElement) : ''; }

  tell(id = this.now()) {
    if (this.updating || id === this.last) return;
    this.last = id;
    this.told(id, !this.isByPointer());
  }

  want(id) { this.wanted = id; }

  // Runs change() (an update of the mirror), then sees to the focus.
  during(change) {
    const held = this.now(), screen = this.mirror.frame.screen;
    this.updating = true;
    change();
    this.mend(held, screen);
    this.updating = false;
    this.tell();
  }

  mend(held, screen) {
    const { frame } = this.mirror;
    const isFirst = screen === '';
    if (frame.screen !== screen && !isFirst) return this.focusOn(this.wanted) || this.focusOn(this.heading());
    if (this.focusOn(this.wanted) || !held) return;
    const now = this.now();
    const lost = now !== held || document.activeElement.closest('[inert]');
    if (lost) this.focusOn(held) || this.focusOn(this.heading());
  }

  // The h1, inside the open dialog if there is one.
  heading() {
    const { modal, frame } = this.mirror;
    const within = modal ? this.mirror.element(modal) : this.mirror.root;
    const found = frame.nodes.find((node) => node.role === 'heading' && (node.level || 1) === 1 &&
      within.contains(this.mirror.element(node.id)));
    return found?.id ?? modal;
  }

  focusOn(id) {
    const element = id ? this.mirror.element(id) : undefined;
    if (!element || element.closest('[inert]')) return false;
    if (id === this.wanted) this.wanted = '';
    element.focus({ preventScroll: true });
    return document.activeElement === element;
  }
}
