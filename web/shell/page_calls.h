// Calls from C++ into the page: web/shell/page_calls.js passes each on to the object that
// web/js/main.js hands to the module. Texts go as address and length, UTF-8. For *_web.cpp only.
#pragma once

#include <cstddef>
#include <cstdint>

// What page_tell carries. Twin of `tell` in web/js/bridge.js.
enum class Tell : int {
  ask_frame = 0,  // text: cause
  ask_wake = 1,   // number: at_ms
  mirror = 2,     // text: JSON
  focus = 3,      // text: id
  announce = 4,   // text; number: 1 = urgent
  fetch = 5,      // text: path; number: ticket
  stop = 6,       // text: title, unit separator, detail
  reload = 7,
  no_memory = 8,
  ask = 9,  // text: name, unit separator, words; number: ticket
};

extern "C" {
double page_now();
int page_today();      // days since 1970-01-01, as the clock on the wall says
double page_random();  // whole, below 2^53
void page_tell(int what, const char* text, std::size_t size, double number);

// A texture of w x h bytes (coverage); rows [y, y + rows) are given, whole rows, from `bytes`.
void page_texture(int id, int w, int h, int y, int rows, const std::uint8_t* bytes);
void page_forget_texture(int id);

void page_draw_begin(float width_px, float height_px);
void page_draw_list(const void* vertices, std::size_t vertex_bytes, const void* indices,
                    std::size_t index_bytes);
// One call of the last list: clip in CSS px (x, y, w, h), index and vertex offsets in elements.
void page_draw_call(int texture, const float* clip, unsigned count, unsigned first_index,
                    unsigned first_vertex);
}
