// Finding content by id. Lists are short: a walk is enough.
#pragma once

#include <algorithm>
#include <vector>

#include "core/catalog/model.h"

namespace rehale::catalog {

// Index of the element with this id, or -1. For anything with a member `id`, and for plain ids.
template <class T>
[[nodiscard]] int index_of(const std::vector<T>& list, const Id& id) {
  const auto found = std::find_if(list.begin(), list.end(), [&](const T& item) {
    if constexpr (std::is_same_v<T, Id>) return item == id;
    else return item.id == id;
  });
  return found == list.end() ? -1 : static_cast<int>(found - list.begin());
}

// The element with this id, or nullptr.
template <class T>
[[nodiscard]] const T* find(const std::vector<T>& list, const Id& id) {
  const int index = index_of(list, id);
  return index < 0 ? nullptr : &list[static_cast<std::size_t>(index)];
}

// The family's own number or, where it has none, the one all families share; nullptr when neither
// has.
[[nodiscard]] inline const Criterion* find_criterion(const Library& library, const Family& family,
                                                     const Id& id) {
  const auto* own = find(family.criteria, id);
  return own != nullptr ? own : find(library.criteria, id);
}

}  // namespace rehale::catalog
