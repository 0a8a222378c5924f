// Dear ImGui's draw data and dynamic textures to the page's WebGL (web/js/canvas.js). Decides
// nothing but what has to be sent. Must not know what is drawn.

#include <imgui.h>

#include "web/shell/check.h"
#include "web/shell/host_state.h"
#include "web/shell/page_calls.h"
#include "web/shell/render_web.h"

namespace rehale::shell {
namespace {

int id_of(const ImTextureData& texture) { return static_cast<int>(texture.GetTexID()); }

// Whole rows, so that the bytes lie in one piece: WebGL 1 cannot read out of the middle of rows.
void send_rows(const ImTextureData& texture, int y, int rows) {
  page_texture(id_of(texture), texture.Width, texture.Height, y, rows,
               texture.Pixels + y * texture.Width);
}

void follow_texture(ImTextureData& texture) {
  static ImTextureID next_id = 1;
  switch (texture.Status) {
    case ImTextureStatus_WantCreate:
      CHECK(texture.Format == ImTextureFormat_Alpha8,
            "a texture has colours; the shell draws coverage");
      texture.SetTexID(next_id++);
      send_rows(texture, 0, texture.Height);
      texture.SetStatus(ImTextureStatus_OK);
      break;
    case ImTextureStatus_WantUpdates:
      send_rows(texture, texture.UpdateRect.y, texture.UpdateRect.h);
      texture.SetStatus(ImTextureStatus_OK);
      break;
    case ImTextureStatus_WantDestroy:
      if (texture.UnusedFrames == 0) break;
      page_forget_texture(id_of(texture));
      texture.SetTexID(ImTextureID_Invalid);
      texture.SetStatus(ImTextureStatus_Destroyed);
      break;
    case ImTextureStatus_OK:
    case ImTextureStatus_Destroyed:
      break;
  }
}

void send_call(const ImDrawCmd& call) {
  const float clip[] = {call.ClipRect.x, call.ClipRect.y, call.ClipRect.z - call.ClipRect.x,
                        call.ClipRect.w - call.ClipRect.y};
  if (clip[2] <= 0 || clip[3] <= 0 || call.ElemCount == 0) return;
  page_draw_call(static_cast<int>(call.GetTexID()), clip, call.ElemCount, call.IdxOffset,
                 call.VtxOffset);
}

void send_list(const ImDrawList& list) {
  if (list.IdxBuffer.empty()) return;
  page_draw_list(list.VtxBuffer.Data, static_cast<std::size_t>(list.VtxBuffer.size_in_bytes()),
                 list.IdxBuffer.Data, static_cast<std::size_t>(list.IdxBuffer.size_in_bytes()));
  for (const ImDrawCmd& call : list.CmdBuffer) {
    CHECK(call.UserCallback == nullptr, "draw callbacks are not supported");
    send_call(call);
  }
}

}  // namespace

void platform::draw(ImDrawData* data) {
  for (ImTextureData* texture : *data->Textures) follow_texture(*texture);
  page_draw_begin(data->DisplaySize.x, data->DisplaySize.y);
  for (const ImDrawList* list : data->CmdLists) send_list(*list);
}

void send_textures_again() {
  for (ImTextureData* texture : ImGui::GetPlatformIO().Textures) {
    if (texture->Status == ImTextureStatus_OK || texture->Status == ImTextureStatus_WantUpdates) {
      send_rows(*texture, 0, texture->Height);
    }
  }
}

}  // namespace rehale::shell
