// Dear ImGui's context and one frame of it: input in, the app's drawing, draw data out.
// Must not know the browser, widgets or screens.

#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <cfloat>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <new>

#include "web/shell/host_state.h"

namespace rehale::shell {
namespace {

constexpr float k_drag_px = 10;  // toolchain.md 4: between a trembling tap (8) and a scroll (24)
constexpr float k_px_per_notch = 100;  // what browsers send for one notch of a wheel
constexpr float k_circle_error = 0.3F, k_curve_error = 1.25F;  // Dear ImGui's own, at density 1
constexpr double k_longest_step_s = 0.1;

ImGuiMouseSource source_of(Pointer::Kind kind) {
  switch (kind) {
    case Pointer::Kind::touch:
      return ImGuiMouseSource_TouchScreen;
    case Pointer::Kind::pen:
      return ImGuiMouseSource_Pen;
    case Pointer::Kind::mouse:
      break;
  }
  return ImGuiMouseSource_Mouse;
}

Pointer::Kind kind_of(ImGuiMouseSource source) {
  if (source == ImGuiMouseSource_TouchScreen) return Pointer::Kind::touch;
  return source == ImGuiMouseSource_Pen ? Pointer::Kind::pen : Pointer::Kind::mouse;
}

void measure_viewport(ImGuiIO& io, const Viewport& viewport) {
  io.DisplaySize = ImVec2(viewport.width_px, viewport.height_px);
  io.DisplayFramebufferScale = ImVec2(viewport.density, viewport.density);
  ImGuiStyle& style = ImGui::GetStyle();
  style.CircleTessellationMaxError = k_circle_error / viewport.density;
  style.CurveTessellationTol = k_curve_error / viewport.density;
}

Pointer read_pointer(const ImGuiIO& io) {
  Pointer p;
  p.kind = kind_of(io.MouseSource);
  p.present = ImGui::IsMousePosValid(&io.MousePos);
  p.x = p.present ? io.MousePos.x : -1;
  p.y = p.present ? io.MousePos.y : -1;
  p.moved_x = io.MouseDelta.x;
  p.moved_y = io.MouseDelta.y;
  p.down = io.MouseDown[0];
  p.pressed = io.MouseClicked[0];
  p.released = io.MouseReleased[0];
  p.dragging = p.kind != Pointer::Kind::mouse && (p.down || p.released) &&
               io.MouseDragMaxDistanceSqr[0] > k_drag_px * k_drag_px;
  p.wheel_px = io.MouseWheel * k_px_per_notch;
  return p;
}

class Hash {
 public:
  void add(const void* data, std::size_t bytes) {
    const auto* const from = static_cast<const unsigned char*>(data);
    for (std::size_t n = 0; n + 4 <= bytes; n += 4) {
      std::uint32_t word = 0;
      std::memcpy(&word, from + n, 4);
      value_ = (value_ ^ word) * 0x100000001b3U;  // FNV-1a's prime
    }
    value_ = (value_ ^ bytes) * 0x100000001b3U;
  }
  [[nodiscard]] std::uint64_t value() const { return value_ | 1U; }

 private:
  std::uint64_t value_ = 0xcbf29ce484222325U;
};

// Names all that platform::draw would send, textures apart; never 0.
std::uint64_t picture_of(const ImDrawData& data, const Viewport& viewport) {
  Hash hash;
  hash.add(&viewport, sizeof viewport);
  for (const ImDrawList* list : data.CmdLists) {
    hash.add(list->VtxBuffer.Data, static_cast<std::size_t>(list->VtxBuffer.size_in_bytes()));
    hash.add(list->IdxBuffer.Data, static_cast<std::size_t>(list->IdxBuffer.size_in_bytes()));
    for (const ImDrawCmd& call : list->CmdBuffer) {
      hash.add(&call.ClipRect, sizeof call.ClipRect);
      const auto texture = static_cast<std::uint64_t>(call.GetTexID());
      hash.add(&texture, sizeof texture);
      const unsigned at[] = {call.ElemCount, call.IdxOffset, call.VtxOffset};
      hash.add(at, sizeof at);
    }
  }
  return hash.value();
}

bool textures_at_rest(const ImDrawData& data) {
  return std::all_of(data.Textures->begin(), data.Textures->end(), [](const ImTextureData* each) {
    return each->Status == ImTextureStatus_OK || each->Status == ImTextureStatus_Destroyed;
  });
}

// false: it is the picture that is there already, and was not drawn again.
bool draw_if_new(ImDrawData* data) {
  State& s = state();
  if (textures_at_rest(*data)) {
    const std::uint64_t picture = picture_of(*data, s.viewport);
    if (picture == std::exchange(s.picture, picture)) return false;
  } else {
    s.picture = 0;  // a texture gets its name only when it is drawn
  }
  platform::draw(data);
  return true;
}

// Dear ImGui writes to what it gets; address 0 can be written to in WASM.
void* allocate(std::size_t size, void* /*user*/) {
  void* const place = std::malloc(size);
  if (place == nullptr) platform::no_memory();
  return place;
}

void release(void* place, void* /*user*/) { std::free(place); }

}  // namespace

void open_imgui() {
  if (ImGui::GetCurrentContext() != nullptr) return;
  std::set_new_handler(platform::no_memory);
  ImGui::SetAllocatorFunctions(allocate, release);
  IMGUI_CHECKVERSION();
  ImGui::CreateContext();
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  io.LogFilename = nullptr;
  io.BackendPlatformName = "rehale";
  io.BackendRendererName = "rehale";
  io.BackendFlags |= ImGuiBackendFlags_RendererHasVtxOffset | ImGuiBackendFlags_RendererHasTextures;
  io.ConfigFlags |= ImGuiConfigFlags_NoMouseCursorChange;
  io.ConfigInputTextCursorBlink = false;
  io.Fonts->TexDesiredFormat =
      ImTextureFormat_Alpha8;  // a quarter of the memory; all is one colour
}

void push_pointer(PointerEvent event, Pointer::Kind kind, float x, float y) {
  ImGuiIO& io = ImGui::GetIO();
  io.AddMouseSourceEvent(source_of(kind));
  if (event == PointerEvent::cancel || event == PointerEvent::leave) {
    io.AddMousePosEvent(-FLT_MAX, -FLT_MAX);  // first away, then up: the release hits nothing
  } else {
    io.AddMousePosEvent(x, y);
  }
  if (event == PointerEvent::down) io.AddMouseButtonEvent(0, true);
  if (event == PointerEvent::up || event == PointerEvent::cancel) io.AddMouseButtonEvent(0, false);
  if (event == PointerEvent::up && kind != Pointer::Kind::mouse) {
    io.AddMousePosEvent(-FLT_MAX, -FLT_MAX);  // a finger leaves no hover behind
  }
  redraw(3, "pointer");
}

void push_wheel(float notches) {
  ImGui::GetIO().AddMouseWheelEvent(0, notches);
  redraw(3, "wheel");
}

bool run_imgui_frame() {
  State& s = state();
  ImGuiIO& io = ImGui::GetIO();
  const double now = platform::now_ms();
  const double step_s = (now - s.last_frame_ms) / 1000;
  s.last_frame_ms = now;
  io.DeltaTime = static_cast<float>(std::clamp(step_s, 0.0001, k_longest_step_s));
  measure_viewport(io, s.viewport);
  ImGui::NewFrame();
  // One device pixel of smooth edge, not one CSS pixel: crisp on dense screens.
  ImGui::GetDrawListSharedData()->InitialFringeScale = 1 / s.viewport.density;
  s.pointer = read_pointer(io);
  if (s.app.frame != nullptr) s.app.frame();
  ImGui::Render();
  const bool is_new = draw_if_new(ImGui::GetDrawData());
  // A press and its release in one tick take two frames: the second has heard something, too.
  if (ImGui::GetCurrentContext()->InputEventsQueue.Size > 0) {
    redraw(1, "queued input");
    s.heard = true;
  }
  return is_new;
}

}  // namespace rehale::shell
