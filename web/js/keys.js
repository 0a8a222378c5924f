// Keys that belong to the page as a whole: Escape, and scrolling where no control wants them.

const LINE_PX = 60, PAGE = 0.85, FAR_PX = 1e6;

function scrollOf(event, height) {
  switch (event.key) {
    case 'ArrowDown': return LINE_PX;
    case 'ArrowUp': return -LINE_PX;
    case 'PageDown': return height * PAGE;
    case 'PageUp': return -height * PAGE;
    case 'End': return FAR_PX;
    case 'Home': return -FAR_PX;
    case ' ': return (event.shiftKey ? -1 : 1) * height * PAGE;
    default: return 0;
  }
}

// Does the focused control use this key itself?
function isTaken(target, key) {
  if (!target.matches?.('button, a, input')) return false;
  if (key === ' ') return true;
  if (target.type === 'number') return true;
  return target.type === 'radio' && key.startsWith('Arrow');
}

// dismiss(), scroll(px)
export function listenToKeys({ dismiss, scroll }) {
  window.addEventListener('keydown', (event) => {
    if (event.defaultPrevented || event.ctrlKey || event.altKey || event.metaKey) return;
    if (event.key === 'Escape') return dismiss();
    const px = scrollOf(event, window.innerHeight);
    if (px === 0 || isTaken(event.target, event.key)) return;
    event.preventDefault();
    scroll(px);
  });
}

// Marks the page while the keyboard is what the person uses: rings on headings are for them.
export function watchInputKind() {
  const { dataset } = document.documentElement;
  window.addEventListener('keydown', () => { dataset.keys = ''; }, true);
  window.addEventListener('pointerdown', () => { delete dataset.keys; }, true);
}
