// What every answer of a server of the page must say: one list for ci/serve, the tests and the settings of web servers
// (hosting.mjs). Sources: W3C Content Security Policy 3, Trusted Types, Permissions Policy; HTML's cross-origin policies.

const k_policy = {
  'default-src': "'none'", 'script-src': "'self' 'wasm-unsafe-eval'", 'style-src': "'self'", 'img-src': "'self'",
  'connect-src': "'self'", 'worker-src': "'self'", 'manifest-src': "'self'", 'base-uri': "'none'", 'form-action': "'none'",
  'frame-ancestors': "'none'", 'require-trusted-types-for': "'script'", 'trusted-types': 'rehale',
};
const k_own = ['camera'];  // for the page itself, not for what others would put into it
const k_denied = ['accelerometer', 'autoplay', 'display-capture', 'encrypted-media', 'fullscreen', 'geolocation', 'gyroscope',
  'magnetometer', 'microphone', 'midi', 'payment', 'picture-in-picture', 'publickey-credentials-get', 'screen-wake-lock', 'usb', 'xr-spatial-tracking'];

export const k_content_policy = Object.entries(k_policy).map((each) => each.join(' ')).join('; ');

export const k_headers = {
  'content-security-policy': k_content_policy,
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': [...k_own.map((name) => `${name}=(self)`), ...k_denied.map((name) => `${name}=()`)].join(', '),
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
};

// What only documents and workers heed is left out for the parts in a version's own folder (named_set.mjs), which are
// neither: .7 KB less for each of a dozen files before the first question.
const k_of_parts = ['cross-origin-resource-policy', 'x-content-type-options'];
export const k_part_headers = Object.fromEntries(k_of_parts.map((name) => [name, k_headers[name]]));
const k_parts_only = /\/set-[0-9a-f]+\//;
export const headersFor = (address) => (k_parts_only.test(address) ? k_part_headers : k_headers);
