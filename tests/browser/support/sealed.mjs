// A sealed code as an educator opens it: with the key file and the parts of the page that open it, under node.
import { decode } from 'cborg';
import { bundled } from '../../bundled.mjs';

// The fields of core/exchange/sealed_code.h.
export function readSealed(code) {
  const payload = Buffer.from(code.slice(2), 'base64url').subarray(0, -4);
  const [assignment, content, enc, sealed] = decode(payload);
  const name = typeof content === 'string' ? content : Buffer.from(content).toString('hex');
  return { assignment, content: name, enc, sealed };
}

// The code of the result inside; '' when the key does not open it.
export async function openSealed(code, keyFile, passphrase) {
  const { services, unlockWith } = await bundled('sealing.js');
  if (await unlockWith(keyFile, passphrase) === undefined) return '';
  const { assignment, content, enc, sealed } = readSealed(code);
  const bound = Buffer.concat([Buffer.from('rehale-sealed-1'), assignment, Buffer.from(content)]);
  const opened = Buffer.from(await services.openSealed([enc, bound, sealed]
    .map((bytes) => Buffer.from(bytes).toString('base64url')).join(' ')), 'base64url');
  return opened.length === 0 ? '' : opened.subarray(0, 2).toString() + opened.subarray(2).toString('base64url');
}
