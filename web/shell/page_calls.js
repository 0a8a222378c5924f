// Emscripten library (--js-library): one-line shims from page_calls.h to the object that web/js/main.js
// gives the module as `page`. Nothing is decided here.
addToLibrary({
  page_now: () => performance.now(),
  page_today: () => Module['page']['today'](),
  page_random: () => Module['page']['random'](),
  page_tell: (what, text, size, number) => Module['page']['tell'](what, text, size, number),
  page_texture: (id, w, h, y, rows, bytes) =>
    Module['page']['texture'](id, w, h, y, HEAPU8.subarray(bytes, bytes + w * rows), rows),
  page_forget_texture: (id) => Module['page']['forgetTexture'](id),
  page_draw_begin: (width, height) => Module['page']['drawBegin'](width, height),
  page_draw_list: (vertices, vertexBytes, indices, indexBytes) =>
    Module['page']['drawList'](HEAPU8.subarray(vertices, vertices + vertexBytes),
                               HEAPU8.subarray(indices, indices + indexBytes)),
  page_draw_call: (texture, clip, count, firstIndex, firstVertex) =>
    Module['page']['drawCall'](texture, HEAPF32.subarray(clip >> 2, (clip >> 2) + 4), count, firstIndex,
                               firstVertex),
});
