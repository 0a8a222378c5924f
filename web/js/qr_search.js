// The reader of QR codes for browsers that have none of their own: npm's jsqr. Fetched only then (find_codes.js).

import jsQR from 'jsqr';

// One code of a picture: {text, corners: [{x, y}, 4 of them in order around]}; undefined when none is found.
export function searchPixels({ data, width, height }) {
  let found = null;
  try {
    found = jsQR(data, width, height, { inversionAttempts: 'dontInvert' });
  } catch (error) {
    console.warn('no code read here:', String(error));  // it trips over some that are cut off
  }
  if (!found || found.data === '') return undefined;
  const { topLeftCorner, topRightCorner, bottomRightCorner, bottomLeftCorner } = found.location;
  return { text: found.data, corners: [topLeftCorner, topRightCorner, bottomRightCorner, bottomLeftCorner] };
}
