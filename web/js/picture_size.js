// Width and height of a PNG or JPEG file from its first bytes, before anything is unpacked: a small file can hold a
// huge picture. PNG: the IHDR chunk, ISO/IEC 15948 11.2.2. JPEG: the frame header, ITU-T T.81 B.2.2.

const MOST_HEAD = 4_194_304;  // colour profiles and small pictures may stand before a JPEG's frame header

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const JPEG = [0xff, 0xd8, 0xff];
const begins = (bytes, with_) => with_.every((byte, n) => bytes[n] === byte);

function sizeOfPng(view) {
  if (view.byteLength < 24 || view.getUint32(12) !== 0x49484452) return undefined;
  return { width: view.getUint32(16), height: view.getUint32(20) };
}

// SOF0 to SOF15; of the same row 4, 8 and 12 are tables and an extension.
const isFrame = (marker) => marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);

function sizeOfJpeg(view) {
  let at = 2;
  while (at + 9 <= view.byteLength) {
    if (view.getUint8(at) !== 0xff) return undefined;
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) { at += 1; continue; }  // filling
    if (isFrame(marker)) return { height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
    at += 2 + view.getUint16(at + 2);
  }
  return undefined;
}

// Does it say of itself that it is a picture, of whatever kind?
export async function isPicture(file) {
  if (file.type.startsWith('image/')) return true;
  const head = new Uint8Array(await file.slice(0, 8).arrayBuffer());
  return begins(head, PNG) || begins(head, JPEG);
}

// {width, height}, both above 0; undefined: neither PNG nor JPEG, or not whole.
export async function pictureSize(file) {
  const bytes = await file.slice(0, MOST_HEAD).arrayBuffer();
  const head = new Uint8Array(bytes, 0, Math.min(8, bytes.byteLength)), view = new DataView(bytes);
  let size;
  if (begins(head, PNG)) size = sizeOfPng(view);
  else if (begins(head, JPEG)) size = sizeOfJpeg(view);
  return size && size.width > 0 && size.height > 0 ? size : undefined;
}
