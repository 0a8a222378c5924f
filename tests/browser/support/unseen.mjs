// Pages that are read by their tree need no pixels, and where the processor draws them all, pixels are half of a run's
// work. Such a page keeps what it would have drawn last, and draws it when a picture is taken. Tests of drawing itself
// (shell_*_test, mirror_test) do without this.

// Before the page: WebGL notes down a frame instead of drawing it; window.drawNow() draws the last one.
function noteFrames() {
  const k_noted = ['bufferData', 'vertexAttribPointer', 'scissor', 'drawElements'];
  let last;
  for (const { prototype } of [WebGL2RenderingContext, WebGLRenderingContext]) {
    const own = Object.fromEntries([...k_noted, 'clear', 'bindTexture'].map((name) => [name, prototype[name]]));
    prototype.clear = function clear(bits) { last = { gl: this, own, calls: [['clear', [bits]]] }; };
    for (const name of k_noted) {
      prototype[name] = function note(...values) {
        // The module's memory holds something else by the time it is drawn.
        last?.calls.push([name, values.map((value) => (ArrayBuffer.isView(value) ? value.slice() : value))]);
      };
    }
    // Textures are filled at once: so they are bound at once, too.
    prototype.bindTexture = function bindTexture(...values) {
      last?.calls.push(['bindTexture', values]);
      own.bindTexture.apply(this, values);
    };
  }
  window.drawNow = () => {
    if (!last || last.gl.isContextLost()) return;
    const { gl, own, calls } = last;
    gl.disable(gl.SCISSOR_TEST);
    for (const [name, values] of calls) {
      own[name].apply(gl, values);
      if (name === 'clear') gl.enable(gl.SCISSOR_TEST);
    }
  };
}

export async function drawOnlyForPictures(page) {
  await page.addInitScript(noteFrames);
  const take = page.screenshot.bind(page);
  page.screenshot = async (options) => {
    // Within a frame, and shown before the picture is taken.
    await page.evaluate(() => new Promise((done) => {
      requestAnimationFrame(() => { window.drawNow?.(); requestAnimationFrame(done); });
    }));
    return take(options);
  };
}
