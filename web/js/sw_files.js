// Files of a set, checked by their sums: SHA-256 in base64, as in `integrity`. Must not know which files there are.

const toBase64 = (bytes) => btoa(String.fromCharCode(...new Uint8Array(bytes)));

export async function isGood(response, sum) {
  const bytes = await response.clone().arrayBuffer();
  return `sha256-${toBase64(await crypto.subtle.digest('SHA-256', bytes))}` === sum;
}

// From the network, past the browser's own cache; rejects where it is another version's or broken.
export async function fetchGood(url, sum) {
  const response = await fetch(url, { cache: 'no-cache', integrity: sum, credentials: 'same-origin' });
  if (!response.ok) throw new Error(`${url}: ${response.status}`);
  return response;
}

// Each version's files lie in a folder of its own: what is the same file of another one.
const withoutFolder = (url) => url.replace(/\/set-[0-9a-f]+(?=\/)/, '');

// The same file of an older set, so that an update fetches only what has changed; undefined where there is none.
export async function copyFrom(sets, url, sum) {
  for (const name of sets) {
    const cache = await caches.open(name);
    for (const request of await cache.keys()) {
      if (withoutFolder(request.url) !== withoutFolder(url)) continue;
      const kept = await cache.match(request);
      if (kept && await isGood(kept, sum)) return kept;
    }
  }
  return undefined;
}
