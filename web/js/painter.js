// Draws Dear ImGui's triangles with WebGL 2, or WebGL 1 where that is all there is. All textures are
// coverage, one byte a pixel. Keeps itself alive over a lost context. Must not know what is drawn.

const VERTEX_BYTES = 20;  // float x, y, u, v; byte r, g, b, a

const VERTEX_SHADER = `
attribute vec2 place, at;
attribute vec4 tint;
uniform vec2 scale;
varying vec2 seen_at;
varying vec4 seen_tint;
void main() {
  seen_at = at;
  seen_tint = tint;
  gl_Position = vec4(place * scale + vec2(-1.0, 1.0), 0.0, 1.0);
}`;

// highp where there is: with mediump, phones cannot tell neighbouring pixels of a large glyph sheet.
const FRAGMENT_SHADER = `
#ifdef GL_FRAGMENT_PRECISION_HIGH
precision highp float;
#else
precision mediump float;
#endif
uniform sampler2D sheet;
varying vec2 seen_at;
varying vec4 seen_tint;
void main() {
  gl_FragColor = vec4(seen_tint.rgb, seen_tint.a * texture2D(sheet, seen_at).a);
}`;

const CONTEXT_OPTIONS = {
  alpha: false, antialias: false, depth: false, stencil: false, powerPreference: 'low-power',
};

// Asks for nothing that would wait for the compiler: that is done at the first use, much later.
function build(gl) {
  const program = gl.createProgram();
  for (const [kind, source] of [[gl.VERTEX_SHADER, VERTEX_SHADER], [gl.FRAGMENT_SHADER, FRAGMENT_SHADER]]) {
    const shader = gl.createShader(kind);
    gl.shaderSource(shader, source);
    gl.compileShader(shader);
    gl.attachShader(program, shader);
  }
  ['place', 'at', 'tint'].forEach((name, slot) => gl.bindAttribLocation(program, slot, name));
  gl.linkProgram(program);
  return program;
}

export class Painter {
  // onLost() when the context has gone, onBack() when it is there again and wants its textures.
  constructor(canvas, { onLost, onBack }) {
    this.canvas = canvas;
    this.gl = canvas.getContext('webgl2', CONTEXT_OPTIONS) || canvas.getContext('webgl', CONTEXT_OPTIONS);
    if (!this.gl) throw new Error('WebGL is not to be had');
    this.version = typeof WebGL2RenderingContext === 'function' &&
      this.gl instanceof WebGL2RenderingContext ? 2 : 1;
    canvas.addEventListener('webglcontextlost', (event) => {
      event.preventDefault();  // or it never comes back
      onLost();
    });
    canvas.addEventListener('webglcontextrestored', () => {
      this.prepare();
      onBack();
    });
    this.prepare();
  }

  prepare() {
    const { gl } = this;
    this.textures = new Map();
    this.program = build(gl);
    this.scale = undefined;
    gl.bindBuffer(gl.ARRAY_BUFFER, gl.createBuffer());
    gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, gl.createBuffer());
    for (const slot of [0, 1, 2]) gl.enableVertexAttribArray(slot);
    gl.enable(gl.BLEND);
    gl.blendFuncSeparate(gl.SRC_ALPHA, gl.ONE_MINUS_SRC_ALPHA, gl.ONE, gl.ONE_MINUS_SRC_ALPHA);
    gl.pixelStorei(gl.UNPACK_ALIGNMENT, 1);
  }

  useProgram() {
    const { gl, program } = this;
    if (!gl.getProgramParameter(program, gl.LINK_STATUS) && !gl.isContextLost()) {
      throw new Error('shaders: ' + gl.getProgramInfoLog(program));
    }
    gl.useProgram(program);
    this.scale = gl.getUniformLocation(program, 'scale');
  }

  texture(id, w, h, y, bytes, rows) {
    const { gl } = this;
    let texture = this.textures.get(id);
    const fresh = !texture;
    if (fresh) {
      texture = gl.createTexture();
      this.textures.set(id, texture);
    }
    gl.bindTexture(gl.TEXTURE_2D, texture);
    if (fresh) {
      for (const [what, how] of [[gl.TEXTURE_MIN_FILTER, gl.LINEAR], [gl.TEXTURE_MAG_FILTER, gl.LINEAR],
        [gl.TEXTURE_WRAP_S, gl.CLAMP_TO_EDGE], [gl.TEXTURE_WRAP_T, gl.CLAMP_TO_EDGE]]) {
        gl.texParameteri(gl.TEXTURE_2D, what, how);
      }
      gl.texImage2D(gl.TEXTURE_2D, 0, gl.ALPHA, w, h, 0, gl.ALPHA, gl.UNSIGNED_BYTE, rows === h ? bytes : null);
    }
    if (!fresh || rows !== h) {
      gl.texSubImage2D(gl.TEXTURE_2D, 0, 0, y, w, rows, gl.ALPHA, gl.UNSIGNED_BYTE, bytes);
    }
  }

  forgetTexture(id) {
    this.gl.deleteTexture(this.textures.get(id) ?? null);
    this.textures.delete(id);
  }

  // The canvas gets its size here, just before it is drawn: setting it earlier would show it empty.
  drawBegin(size, width, height) {
    const { gl, canvas } = this;
    if (canvas.width !== size.width || canvas.height !== size.height) {
      canvas.width = size.width;
      canvas.height = size.height;
    }
    this.toPixelX = canvas.width / width;
    this.toPixelY = canvas.height / height;
    if (this.scale === undefined) this.useProgram();
    gl.viewport(0, 0, canvas.width, canvas.height);
    gl.disable(gl.SCISSOR_TEST);
    gl.clear(gl.COLOR_BUFFER_BIT);
    gl.enable(gl.SCISSOR_TEST);
    gl.uniform2f(this.scale, 2 / width, -2 / height);
    this.bound = undefined;
  }

  drawList(vertices, indices) {
    const { gl } = this;
    gl.bufferData(gl.ARRAY_BUFFER, vertices, gl.STREAM_DRAW);
    gl.bufferData(gl.ELEMENT_ARRAY_BUFFER, indices, gl.STREAM_DRAW);
    this.pointAt(0);
  }

  pointAt(firstVertex) {
    const { gl } = this;
    const from = firstVertex * VERTEX_BYTES;
    gl.vertexAttribPointer(0, 2, gl.FLOAT, false, VERTEX_BYTES, from);
    gl.vertexAttribPointer(1, 2, gl.FLOAT, false, VERTEX_BYTES, from + 8);
    gl.vertexAttribPointer(2, 4, gl.UNSIGNED_BYTE, true, VERTEX_BYTES, from + 16);
    this.firstVertex = firstVertex;
  }

  drawCall(texture, clip, count, firstIndex, firstVertex) {
    const { gl } = this;
    if (firstVertex !== this.firstVertex) this.pointAt(firstVertex);
    if (texture !== this.bound) {
      gl.bindTexture(gl.TEXTURE_2D, this.textures.get(texture) ?? null);
      this.bound = texture;
    }
    const left = Math.floor(clip[0] * this.toPixelX);
    const right = Math.ceil((clip[0] + clip[2]) * this.toPixelX);
    const top = Math.floor(clip[1] * this.toPixelY);
    const bottom = Math.ceil((clip[1] + clip[3]) * this.toPixelY);
    if (right <= left || bottom <= top) return;
    gl.scissor(left, this.canvas.height - bottom, right - left, bottom - top);
    gl.drawElements(gl.TRIANGLES, count, gl.UNSIGNED_SHORT, firstIndex * 2);
  }
}
