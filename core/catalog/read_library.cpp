#include "core/catalog/read_parts.h"

namespace rehale::catalog {
namespace {

FinderStep read_step(const Reader& place) {
  place.allow_only({"id", "answers"});
  FinderStep step{place.id("id"), {}};
  for (const auto& answer : place.list("answers")) {
    answer.allow_only({"id", "family", "next"});
    step.answers.push_back(
        {answer.id("id"), answer.id_or_none("family"), answer.id_or_none("next")});
  }
  return step;
}

}  // namespace

void read_library(const Reader& root, Library& library) {
  root.allow_only({"schema", "languages", "families", "sources", "shared_techniques", "criteria",
                   "finder", "checked"});
  check_head(root);
  library.families = root.ids("families");
  library.languages = root.ids("languages");
  library.shared_techniques = root.ids("shared_techniques");
  const auto sources = root.at("sources");
  if (const auto* object = sources.expect(Json::Type::object))
    for (const auto& key : object->keys) library.sources[key] = sources.text(key);
  if (root.has("checked")) {
    const auto checked = root.at("checked");
    if (const auto* object = checked.expect(Json::Type::object))
      for (const auto& key : object->keys) library.checked[key] = checked.text(key);
  }
  for (const auto& place : root.list("criteria")) library.criteria.push_back(read_criterion(place));
  for (const auto& place : root.list("finder")) library.finder.push_back(read_step(place));
}

}  // namespace rehale::catalog
