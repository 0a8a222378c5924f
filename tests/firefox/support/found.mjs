// What stands on the page in Firefox, asked for as tests/browser/support asks for it (the few calls of a Playwright
// locator that it makes). Roles and names are Firefox's own: its accessibility tree, by WebDriver BiDi.
import { setTimeout as pause } from 'node:timers/promises';

const k_within_ms = 30_000;

// Of the elements below `from`, those that `keep` (a function in the page) says yes to.
async function kept(handles, keep, wanted) {
  const yes = await Promise.all(handles.map((handle) => handle.evaluate(keep, wanted)));
  return handles.filter((_, n) => yes[n]);
}

const levelOf = (element, level) => Number(element.getAttribute('aria-level') ?? element.tagName.slice(1)) === level;
const isChecked = (element, wanted) => (element.checked ?? element.ariaChecked === 'true') === wanted;
const isNamed = (element, { source, flags }) =>
  new RegExp(source, flags).test(element.ariaLabel ?? element.textContent);

const k_called = { img: 'image' };  // what Firefox calls it (ARIA 1.3)

// queryAXTree is puppeteer's own way to WebDriver BiDi's browsingContext.locateNodes, type accessibility.
async function byRole(root, role, { name, level, checked, exact }) {
  const exactly = typeof name === 'string' && exact !== false ? name : undefined;
  let all = [];
  for await (const handle of root.queryAXTree(exactly, k_called[role] ?? role)) all.push(handle);
  if (level !== undefined) all = await kept(all, levelOf, level);
  if (checked !== undefined) all = await kept(all, isChecked, checked);
  if (name instanceof RegExp) all = await kept(all, isNamed, { source: name.source, flags: name.flags });
  return all;
}

// label: how it is called where something does not hold; seek() -> the handles that are there now.
export class Found {
  constructor(page, label, seek) { Object.assign(this, { page, label, all_now: seek }); }

  toString() { return this.label; }

  getByRole(role, wish = {}) {
    const seek = async () => (await Promise.all((await this.all_now()).map((root) => byRole(root, role, wish)))).flat();
    return new Found(this.page, `${this.label} ${role} ${wish.name ?? ''}`, seek);
  }

  filter({ hasText }) {
    const wanted = hasText instanceof RegExp ? hasText : new RegExp(hasText.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'), 'i');
    const seek = async () => kept(await this.all_now(), isNamed, { source: wanted.source, flags: wanted.flags });
    return new Found(this.page, `${this.label} with ${wanted}`, seek);
  }

  first() { return new Found(this.page, `first ${this.label}`, async () => (await this.all_now()).slice(0, 1)); }

  async count() { return (await this.all_now()).length; }

  async all() {
    return (await this.all_now()).map((handle, n) => new Found(this.page, `${this.label} [${n}]`, async () => [handle]));
  }

  // The only one; waits for it.
  async one(within = k_within_ms) {
    for (const end = Date.now() + within; ;) {
      const all = await this.all_now();
      if (all.length === 1) return all[0];
      if (all.length > 1) throw new Error(`${all.length} of them, not one: ${this.label}`);
      if (Date.now() > end) throw new Error(`not there within ${within} ms: ${this.label}`);
      await pause(30);
    }
  }

  async waitFor({ timeout, state = 'visible' } = {}) {
    if (!['visible', 'attached'].includes(state)) throw new Error(`not known here: waiting until ${state}`);
    await this.one(timeout);
  }

  async evaluate(run, wanted) { return (await this.one()).evaluate(run, wanted); }

  async evaluateAll(run, wanted) {
    const list = await this.page.evaluateHandle((...all) => all, ...await this.all_now());
    return list.evaluate(run, wanted);
  }

  elementHandle() { return this.one(); }
  textContent() { return this.evaluate((element) => element.textContent); }
  innerText() { return this.evaluate((element) => element.innerText); }
  allTextContents() { return this.evaluateAll((all) => all.map((element) => element.textContent)); }
  allInnerTexts() { return this.evaluateAll((all) => all.map((element) => element.innerText)); }
  getAttribute(name) { return this.evaluate((element, which) => element.getAttribute(which), name); }
  inputValue() { return this.evaluate((element) => element.value); }
  isChecked() { return this.evaluate((element) => element.checked); }
  focus() { return this.evaluate((element) => element.focus()); }
  async boundingBox() { return (await this.one()).boundingBox(); }

  async press(key) {
    await this.focus();
    await this.page.keyboard.press(key);
  }

  // What was in it is chosen, and typed over.
  async fill(text) {
    await this.evaluate((element) => { element.focus(); element.select(); });
    await this.page.keyboard.type(text);
  }
}
