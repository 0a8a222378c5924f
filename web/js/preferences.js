// What the person's system asks for, now and whenever it changes.

const QUERIES = [  // in the order of the flags of rehale_preferences
  '(prefers-color-scheme: dark)', '(prefers-contrast: more)', '(forced-colors: active)',
  '(prefers-reduced-motion: reduce)',
];

export function readPreferences() {
  const flags = QUERIES.reduce((sum, query, bit) => sum | (matchMedia(query).matches ? 1 << bit : 0), 0);
  const rootFontPx = parseFloat(getComputedStyle(document.documentElement).fontSize) || 16;
  const languages = navigator.languages?.length ? navigator.languages : [navigator.language || 'en'];
  return { flags, rootFontPx, languages: languages.slice(0, 10).join() };
}

// rem: an element one rem wide; it resizes when the browser's own text size does.
export function watchPreferences(rem, onChange) {
  for (const query of QUERIES) matchMedia(query).addEventListener('change', onChange);
  window.addEventListener('languagechange', onChange);
  new ResizeObserver(onChange).observe(rem);
}
