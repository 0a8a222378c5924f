// What Dear ImGui's own core calls in its widget and table sources, which we do not compile: the
// app draws with draw lists and asks for no widget, so 60 KB of code would travel for nothing. Each
// of these is either never reached without a widget, or has nothing to do without one. A new
// undefined symbol at link time after an update of Dear ImGui: read where it is called before it is
// put here.
#include <imgui.h>
#include <imgui_internal.h>

#include <cstdlib>
#include <cstring>

// Called at start, at rest, or when nothing of the kind is there: nothing to do.
ImGuiInputTextState::ImGuiInputTextState() {
  std::memset(static_cast<void*>(this), 0, sizeof(*this));
}
void ImGuiMenuColumns::Update(float /*spacing*/, bool /*window_reappearing*/) {}

namespace ImGui {

void InputTextDeactivateHook(ImGuiID /*id*/) {}
void TableSettingsAddSettingsHandler() {}
void TableGcCompactSettings() {}
void TableGcCompactTransientBuffers(ImGuiTable* /*table*/) {}
void TableGcCompactTransientBuffers(ImGuiTableTempData* /*table*/) {}

// The title bar of the hidden window that every frame begins with: never shown, never pressed.
void Scrollbar(ImGuiAxis /*axis*/) {}
bool CollapseButton(ImGuiID /*id*/, const ImVec2& /*at*/) { return false; }
bool ButtonBehavior(const ImRect& /*box*/, ImGuiID /*id*/, bool* hovered, bool* held,
                    ImGuiButtonFlags /*flags*/) {
  if (hovered != nullptr) *hovered = false;
  if (held != nullptr) *held = false;
  return false;
}

// Reached from a widget only.
void EndColumns() { std::abort(); }
void EndMenuBar() { std::abort(); }
ImGuiMultiSelectIO* EndMultiSelect() { std::abort(); }
void EndTabBar() { std::abort(); }
void EndTable() { std::abort(); }
void TreePop() { std::abort(); }
bool Selectable(const char* /*label*/, bool /*selected*/, ImGuiSelectableFlags /*flags*/,
                const ImVec2& /*size*/) {
  std::abort();
}
void SeparatorText(const char* /*label*/) { std::abort(); }
void TextV(const char* /*format*/, va_list /*arguments*/) { std::abort(); }

}  // namespace ImGui

// sscanf as imgui.cpp sees it (web/CMakeLists.txt): it reads settings files only, and there are
// none.
extern "C" int rehale_reads_no_settings(const char* /*text*/, const char* /*format*/, ...) {
  return 0;
}
