// QR codes on the screen and on paper, read by Debian's zbar-tools.
import { execFileSync } from 'node:child_process';

// Of an image file: all texts, in no order.
export function readByZbar(file) {
  return execFileSync('zbarimg', ['--raw', '--quiet', '--nodbus', '-Sdisable', '-Sqrcode.enable', file], { encoding: 'utf8' })
    .trim().split('\n');
}
