// The content that ships, loaded from assets/ of this checkout.
#pragma once

#include "core/catalog/care.h"
#include "core/catalog/model.h"

namespace rehale::support {

[[nodiscard]] const catalog::Library& shipped_library();
// Aborts with the findings printed when the content is broken or there is no such family.
[[nodiscard]] const catalog::Family& shipped_family(const catalog::Id& id);
// Of the same; aborts when its care.json is broken.
[[nodiscard]] catalog::Care care_of(const catalog::Id& family);

}  // namespace rehale::support
