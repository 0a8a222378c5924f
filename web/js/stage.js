// How large the page is in CSS px and in device pixels, followed live: window, zoom, another monitor.

// Tells onChange({width, height, density, pixels: {width, height}}) now and at every change.
export function watchSize(element, onChange) {
  let last = '';
  const tell = (width, height, pixels) => {
    if (!(width > 0 && height > 0)) return;  // hidden
    const key = [width, height, pixels.width, pixels.height].join();
    if (key === last) return;
    last = key;
    onChange({ width, height, density: pixels.width / width, pixels });
  };
  const measure = () => {
    const { width, height } = element.getBoundingClientRect();
    const ratio = window.devicePixelRatio || 1;
    tell(width, height, {
      width: Math.max(1, Math.round(width * ratio)), height: Math.max(1, Math.round(height * ratio)),
    });
  };
  const observer = new ResizeObserver((entries) => {
    const exact = entries.at(-1).devicePixelContentBoxSize?.[0];
    if (!exact) return measure();
    const { width, height } = entries.at(-1).contentRect;
    tell(width, height, { width: exact.inlineSize, height: exact.blockSize });
  });
  try {
    observer.observe(element, { box: 'device-pixel-content-box' });
  } catch {
    observer.observe(element);  // Safari has no such box
    watchDensity(measure);
  }
  measure();
}

// A media query holds one density only: ask again for each new one.
function watchDensity(onChange) {
  const next = () => {
    matchMedia(`(resolution: ${window.devicePixelRatio}dppx)`)
      .addEventListener('change', () => { onChange(); next(); }, { once: true });
  };
  next();
}
