// How large the page is in CSS px and in device pixels, followed live: window, zoom, another monitor.

// Tells onChange({width, height, density, pixels: {width, height}}) now and at every change. Returns a
// function to call before each frame: not every change of density is told by every browser.
export function watchSize(element, onChange) {
  let last = '';
  const tell = (width, height, pixels) => {
    if (!(width > 0 && height > 0)) return;  // hidden
    const key = [width, height, pixels.width, pixels.height].join();
    if (key === last) return;
    last = key;
    onChange({ width, height, density: pixels.width / width, pixels });
  };
  const observer = new ResizeObserver((entries) => {
    const { contentRect: { width, height }, devicePixelContentBoxSize: exact } = entries[entries.length - 1];
    tell(width, height, pixelsOf(width, height, exact?.[0]));
  });
  const measure = () => {
    const { width, height } = element.getBoundingClientRect();
    tell(width, height, pixelsOf(width, height));
  };
  try {
    observer.observe(element, { box: 'device-pixel-content-box' });
  } catch {
    observer.observe(element);  // Safari has no such box
  }
  watchDensity(measure);
  measure();
  let ratio = window.devicePixelRatio;
  return () => {
    if (window.devicePixelRatio === ratio) return;
    ratio = window.devicePixelRatio;
    measure();
  };
}

// exact: the browser's own count of device pixels. It knows how edges are rounded; but under emulation it
// is that of the real screen, and then the ratio is right.
export function pixelsOf(width, height, exact, ratio = window.devicePixelRatio || 1) {
  const round = (px, own) => (own > 0 && Math.abs(own - px * ratio) < 2 ? own : Math.max(1, Math.round(px * ratio)));
  return { width: round(width, exact?.inlineSize), height: round(height, exact?.blockSize) };
}

// A media query holds one density only: ask again for each new one.
function watchDensity(onChange) {
  const next = () => {
    matchMedia(`(resolution: ${window.devicePixelRatio}dppx)`)
      .addEventListener('change', () => { onChange(); next(); }, { once: true });
  };
  next();
}
