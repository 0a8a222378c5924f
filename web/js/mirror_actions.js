// What is done on mirror elements by keyboard, screen reader, switch or script goes to C++. A press by a
// pointer does not: that reaches the canvas, and one press must act once. Must not know WASM.

export class MirrorActions {
  // press(id), setNumber(id, number); pointer: {recent}, a PointerInput.
  constructor(mirror, { press, setNumber, pointer }) {
    Object.assign(this, { mirror, press, setNumber, pointer });
    this.touched = new Set();  // inputs that may show something else than C++ says
    const { root } = mirror;
    root.addEventListener('click', (event) => this.click(event));
    root.addEventListener('keydown', (event) => this.key(event));
    root.addEventListener('input', (event) => this.typing(event));
    root.addEventListener('change', (event) => this.commitTyped(event.target));
    root.addEventListener('focusout', (event) => this.commitTyped(event.target));
  }

  // detail 0: not a pointer's. Some readers say 1 all the same, but then no pointer was near.
  click(event) {
    const id = this.mirror.idOf(event.target);
    const node = this.mirror.node(id);
    if (!node || node.role === 'link' || node.role === 'spin') return;
    const isInput = node.role === 'radio' || node.role === 'checkbox';
    if (event.detail !== 0 && this.pointer.recent) {
      if (isInput) event.preventDefault();
      return;
    }
    if (isInput) this.touched.add(id);
    if (isInput || event.target.matches('button')) this.press(id);
  }

  key(event) {
    const { target } = event;
    if (event.repeat && (event.key === 'Enter' || event.key === ' ') && target.matches('button, a')) {
      event.preventDefault();  // a key held down is one press
    }
    if (target.type === 'number') this.numberKey(event);
  }

  numberKey(event) {
    const { target } = event;
    if (event.key === 'Enter') return this.commitTyped(target);
    if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
    event.preventDefault();  // browsers differ in what they tell about steps
    if (!Number.isFinite(target.valueAsNumber)) {  // half typed: a step is from what was
      delete target.dataset.typing;
      this.mirror.settle(this.mirror.idOf(target));
    }
    if (event.key === 'ArrowUp') target.stepUp();
    else target.stepDown();
    this.commit(target);
  }

  typing(event) {
    if (event.target.type === 'number') event.target.dataset.typing = '';
  }

  // change, Enter and blur may all come for one typed number.
  commitTyped(target) {
    if (target.dataset?.typing !== undefined) this.commit(target);
  }

  commit(target) {
    const id = this.mirror.idOf(target);
    delete target.dataset.typing;
    this.touched.add(id);
    const number = target.valueAsNumber;
    const known = this.mirror.node(id)?.number ?? 0;
    if (Number.isFinite(number) && number !== known) this.setNumber(id, number);
    else this.mirror.settle(id);
  }

  // When C++ has had its frames and rests: a refused action is undone on the element, too.
  settle() {
    for (const id of this.touched) this.mirror.settle(id);
    this.touched.clear();
  }
}
