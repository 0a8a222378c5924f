// Styles that come with a later part: files of their own, not words put into the page, since the strictest
// content policy forbids those.

// name: beside the script that asks (ci/lib/bundle.mjs puts it there). {link, isHere}: a promise.
export function bringStyle(name) {
  const link = document.createElement('link');
  link.rel = 'stylesheet';
  link.href = new URL(name, import.meta.url).href;
  const isHere = new Promise((done, failed) => {
    link.onload = done;
    link.onerror = () => failed(new Error(`${name} did not arrive`));
  });
  document.head.append(link);
  return { link, isHere };
}
