// Pictures of QR codes for tests: as a film for Chromium's camera that is none, and as photos of codes on paper. The
// codes are made by npm's qrcode-generator.
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import qrcode from 'qrcode-generator';
import { closePage, openPage } from './browser.mjs';

const k_quiet = 4;  // modules around a code
const k_width = 640, k_height = 480, k_frames_a_second = 5;

function makeCode(text) {
  const code = qrcode(0, 'M');
  code.addData(text, 'Byte');
  code.make();
  return code;
}

// Brightness of a frame with the code in its middle; '': nothing to be seen.
function luma(text) {
  const frame = Buffer.alloc(k_width * k_height, 235);
  if (text === '') return frame;
  const code = makeCode(text), count = code.getModuleCount();
  const px = Math.floor(k_height / (count + 2 * k_quiet));
  const [left, top] = [(k_width - count * px) >> 1, (k_height - count * px) >> 1];
  for (let y = 0; y < count * px; y += 1) {
    for (let x = 0; x < count * px; x += 1) {
      if (code.isDark(Math.floor(y / px), Math.floor(x / px))) frame[(top + y) * k_width + left + x] = 16;
    }
  }
  return frame;
}

// Writes a film (YUV4MPEG2) that shows each text as a code for `seconds`, then nothing for half as long. Chromium's
// --use-file-for-fake-video-capture shows it over and over.
export function writeFilm(file, texts, seconds = 1.2) {
  const colours = Buffer.alloc((k_width * k_height) / 2, 128);
  const parts = [Buffer.from(`YUV4MPEG2 W${k_width} H${k_height} F${k_frames_a_second}:1 Ip A1:1 C420jpeg\n`)];
  const show = (text, span) => {
    const frame = Buffer.concat([Buffer.from('FRAME\n'), luma(text), colours]);
    for (let n = 0; n < Math.round(span * k_frames_a_second); n += 1) parts.push(frame);
  };
  for (const text of texts) {
    show(text, seconds);
    show('', seconds / 2);
  }
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, Buffer.concat(parts));
  return file;
}

// Codes as a camera sees them on a table: in rows, each `px` wide, turned by `degrees`, leaning back, a little out of focus,
// in uneven light. Returns the file's bytes.
export async function photograph(browser, texts, { width = 1600, height = 1200, px = 420, degrees = 0, lean = 0, type = 'jpeg' } = {}) {
  const page = await openPage(browser, 'about:blank', { size: { width, height } });
  const codes = texts.map((text) => `<div>${makeCode(text).createSvgTag({ cellSize: 4, margin: 16, scalable: true })}<p>Show this at your next visit.</p></div>`);
  await page.setContent(`<style>
    body { margin: 0; height: 100vh; display: flex; flex-wrap: wrap; gap: 60px; align-items: center; justify-content: center; overflow: hidden;
      background: linear-gradient(110deg, #fff, #b9b4a6); filter: blur(.7px); }
    div { width: ${px}px; transform: perspective(${3 * px}px) rotateX(${lean}deg) rotate(${degrees}deg); font: 20px sans-serif; } svg { width: ${px}px; height: ${px}px; }
  </style>${codes.join('')}`);
  const bytes = await page.screenshot({ type, timeout: 120_000, ...(type === 'jpeg' && { quality: 70 }) });
  await closePage(page);
  return bytes;
}
