#include <array>
#include <limits>

#include "core/catalog/read_parts.h"

namespace rehale::catalog {
namespace {

constexpr std::array<std::pair<std::string_view, Kind>, 6> k_kinds{{{"one", Kind::one},
                                                                    {"several", Kind::several},
                                                                    {"order", Kind::order},
                                                                    {"picture", Kind::picture},
                                                                    {"timing", Kind::timing},
                                                                    {"numbers", Kind::numbers}}};

std::optional<Kind> read_kind(const Reader& place) {
  const auto name = place.id("kind");
  for (const auto& [known, kind] : k_kinds)
    if (name == known) return kind;
  place.at("kind").finding("unknown-kind", {"use one, several, order, picture, timing or numbers"});
  return std::nullopt;
}

Option read_option(const Reader& place, Kind kind) {
  Option option;
  if (kind == Kind::timing || kind == Kind::numbers) {
    place.allow_only({"id", "right", "technique", "misconception", "from", "to"});
    option.from = place.number("from");
    option.to = place.number_or_null("to").value_or(std::numeric_limits<double>::infinity());
  } else if (kind == Kind::picture) {
    place.allow_only({"id", "right", "technique", "misconception", "pose"});
    option.pose = place.ids("pose");
  } else {
    place.allow_only({"id", "right", "technique", "misconception"});
  }
  option.id = place.id("id");
  option.right = place.flag_or_no("right");
  option.technique = place.id_or_none("technique");
  option.misconception = place.id_or_none("misconception");
  return option;
}

NumberRange read_range(const Reader& place) {
  place.allow_only({"unit", "min", "max", "step", "start"});
  return {place.text("unit"), place.number("min"), place.number("max"), place.number("step"),
          place.number("start")};
}

void allow_members(const Reader& place, Kind kind) {
  switch (kind) {
    case Kind::order:
      return place.allow_only({"id", "kind", "techniques", "pose", "actions"});
    case Kind::timing:
      return place.allow_only(
          {"id", "kind", "techniques", "pose", "criterion", "range", "options"});
    case Kind::numbers:
      return place.allow_only({"id", "kind", "techniques", "pose", "range", "options"});
    default:
      return place.allow_only({"id", "kind", "techniques", "pose", "options"});
  }
}

Question read_question(const Reader& place) {
  Question question;
  question.id = place.id("id");
  question.techniques = place.ids("techniques");
  question.pose = place.ids_or_none("pose");
  const auto kind = read_kind(place);
  if (!kind) return question;
  question.kind = *kind;
  allow_members(place, *kind);
  if (*kind == Kind::order) {
    question.actions = place.ids("actions");
    return question;
  }
  if (*kind == Kind::timing) question.criterion = place.text("criterion");
  if (*kind == Kind::timing || *kind == Kind::numbers)
    question.range = read_range(place.at("range"));
  for (const auto& option : place.list("options"))
    question.options.push_back(read_option(option, *kind));
  return question;
}

}  // namespace

void read_questions(const Reader& root, Family& family) {
  root.allow_only({"schema", "family", "questions"});
  check_head(root);
  check_named(root, "family", family.id);
  for (const auto& place : root.list("questions")) family.questions.push_back(read_question(place));
}

}  // namespace rehale::catalog
