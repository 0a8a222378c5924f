// What the page may ask of the renderer. For *_web.cpp only.
#pragma once

namespace rehale::shell {

// After a lost WebGL context has come back: every texture goes to the page once more.
void send_textures_again();

}  // namespace rehale::shell
