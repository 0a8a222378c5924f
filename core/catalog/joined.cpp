#include "core/catalog/joined.h"

namespace rehale::catalog {

std::string joined(Words words) {
  std::string all;
  for (const auto word : words) all.append(word);
  return all;
}

}  // namespace rehale::catalog
