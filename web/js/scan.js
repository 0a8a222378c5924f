// Reads QR codes for the educator's desk: from files of pictures, and by camera. Loaded when first wanted (desk.js).
// Pictures are bounded before they are unpacked. Must not know what a code says.

import './scan.css';
import { textsIn } from './find_codes.js';
import { pictureSize } from './picture_size.js';

export { scanByCamera } from './camera.js';

const MOST_BYTES = 30_000_000, MOST_PIXELS = 40_000_000;

async function unpack(file) {
  const size = await pictureSize(file);
  if (!size) return { kind: 'no-picture' };
  if (size.width * size.height > MOST_PIXELS) return { kind: 'large' };
  try {
    return { picture: await createImageBitmap(file) };
  } catch {
    return { kind: 'no-picture' };
  }
}

// {kind, text} as web/screens/desk_state.h has them: "codes" with a line each, or why there are none.
export async function codesOf(file) {
  if (file.size > MOST_BYTES) return { kind: 'large', text: '' };
  const { kind, picture } = await unpack(file);
  if (!picture) return { kind, text: '' };
  try {
    const texts = await textsIn(picture);
    return texts.length === 0 ? { kind: 'no-code', text: '' } : { kind: 'codes', text: texts.join('\n') };
  } catch (error) {
    console.warn('pictures cannot be read now:', String(error));
    return { kind: 'no-reader', text: '' };
  } finally {
    picture.close();
  }
}
