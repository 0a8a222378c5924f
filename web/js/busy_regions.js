// Where in a picture QR codes may lie: patches that are dark and light in turn all over, about as wide as high, with
// calm around them, as the quiet zone of ISO/IEC 18004 asks for. Pure: pixels in, rectangles out.

const BLOCK_PX = 4;
const LEAST_RANGE = 60;       // between the darkest and the lightest of a block, of 255
const LEAST_BLOCKS = 10;      // a side
const MOST_OBLONG = 2;
const LEAST_FILLED = 0.3;     // of the rectangle; a code that is turned by 45 degrees fills half of it
const MOST_REGIONS = 40;

// 1 for each block that has both dark and light; a block looks one pixel into the next, so that no edge lies between
// two. Green stands for brightness.
function busyBlocks({ data, width, height }, columns, rows) {
  const busy = new Uint8Array(columns * rows);
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      let [least, most] = [255, 0];
      for (let y = row * BLOCK_PX; y <= Math.min((row + 1) * BLOCK_PX, height - 1); y += 1) {
        for (let x = column * BLOCK_PX; x <= Math.min((column + 1) * BLOCK_PX, width - 1); x += 1) {
          const green = data[4 * (y * width + x) + 1];
          if (green < least) least = green;
          if (green > most) most = green;
        }
      }
      if (most - least >= LEAST_RANGE) busy[row * columns + column] = 1;
    }
  }
  return busy;
}

// The patch that hangs together with block `start`; its blocks are taken out of `busy`.
function takePatch(busy, columns, start) {
  const patch = { left: columns, right: 0, top: busy.length, bottom: 0, count: 0 };
  const stack = [start];
  busy[start] = 0;
  while (stack.length > 0) {
    const at = stack.pop(), column = at % columns, row = (at - column) / columns;
    patch.count += 1;
    patch.left = Math.min(patch.left, column);
    patch.right = Math.max(patch.right, column);
    patch.top = Math.min(patch.top, row);
    patch.bottom = Math.max(patch.bottom, row);
    for (let dy = -1; dy <= 1; dy += 1) {
      for (let dx = -1; dx <= 1; dx += 1) {
        const next = at + dy * columns + dx;
        if (column + dx < 0 || column + dx >= columns || !busy[next]) continue;  // nothing above or below
        busy[next] = 0;
        stack.push(next);
      }
    }
  }
  return patch;
}

function mayBeCode({ left, right, top, bottom, count }) {
  const [wide, high] = [right - left + 1, bottom - top + 1];
  return Math.min(wide, high) >= LEAST_BLOCKS && Math.max(wide, high) <= MOST_OBLONG * Math.min(wide, high) && count >= LEAST_FILLED * wide * high;
}

// pixels: ImageData. Rectangles {x, y, width, height} in its pixels, the largest first.
export function regionsOf(pixels) {
  const columns = Math.floor(pixels.width / BLOCK_PX), rows = Math.floor(pixels.height / BLOCK_PX);
  const busy = busyBlocks(pixels, columns, rows), found = [];
  for (let at = 0; at < busy.length; at += 1) {
    if (!busy[at]) continue;
    const patch = takePatch(busy, columns, at);
    if (mayBeCode(patch)) found.push(patch);
  }
  found.sort((one, other) => other.count - one.count);
  return found.slice(0, MOST_REGIONS).map(({ left, right, top, bottom }) => ({
    x: left * BLOCK_PX, y: top * BLOCK_PX, width: (right - left + 1) * BLOCK_PX, height: (bottom - top + 1) * BLOCK_PX,
  }));
}
