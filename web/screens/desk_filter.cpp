// Which results count on the desk's screens: kind of device, first check or again, language; and
// for the list of people the order.
#include <algorithm>

#include "web/screens/desk_words.h"

namespace rehale::screens {

namespace {

// One row a value, "all" first when `all` is given. Returns the place chosen now.
int pick(App& app, const char* id, const char* name, std::vector<std::string> labels, int chosen) {
  kit::Choices choices{.id = id, .name = app.say(name)};
  kit::heading(*app.ui, std::string(id) + "-title", choices.name, kit::Heading::section);
  for (std::size_t n = 0; n < labels.size(); ++n) {
    choices.options.push_back({.id = std::to_string(n), .label = std::move(labels[n])});
  }
  return kit::one_of(*app.ui, choices, chosen);
}

int place_of(const std::vector<catalog::Id>& all, const catalog::Id& one) {
  const auto found = std::ranges::find(all, one);
  return found == all.end() ? -1 : static_cast<int>(found - all.begin());
}

void pick_family(App& app, bool every) {
  Desk& desk = app.desk;
  const int shift = every ? 1 : 0;
  std::vector<std::string> labels;
  if (every) labels.push_back(app.say("desk/filter/all-kinds"));
  for (const catalog::Id& family : desk.families()) labels.push_back(family_name(app, family));
  const int now =
      every && desk.all_families ? 0 : shift + place_of(desk.families(), desk.filter.family);
  const int then = pick(app, "kind", "desk/filter/kind", std::move(labels), now);
  if (then == now || then < 0) return;
  if (every) desk.all_families = then == 0;
  if (then >= shift) desk.show_family(desk.families()[static_cast<std::size_t>(then - shift)]);
  else desk.filter_changed();
}

void pick_again(App& app) {
  Desk& desk = app.desk;
  const int now = !desk.filter.again ? 0 : (*desk.filter.again ? 2 : 1);
  const int then = pick(
      app, "time", "desk/filter/time",
      {app.say("desk/filter/both"), app.say("desk/filter/first"), app.say("desk/filter/again")},
      now);
  if (then == now) return;
  desk.filter.again.reset();
  if (then > 0) desk.filter.again = then == 2;
  desk.filter_changed();
}

void pick_language(App& app) {
  Desk& desk = app.desk;
  if (desk.languages().size() < 2) return;
  std::vector<std::string> labels{app.say("desk/filter/all-languages")};
  for (const catalog::Id& language : desk.languages()) {
    const std::string& name = app.say("languages/" + language);
    labels.push_back(name.empty() ? language : name);
  }
  const int now = desk.filter.language ? 1 + place_of(desk.languages(), *desk.filter.language) : 0;
  const int then = pick(app, "language", "desk/filter/language", std::move(labels), now);
  if (then == now) return;
  desk.filter.language.reset();
  if (then > 0) desk.filter.language = desk.languages()[static_cast<std::size_t>(then - 1)];
  desk.filter_changed();
}

void pick_sort(App& app) {
  Desk& desk = app.desk;
  const int now = desk.sort == DeskSort::newest ? 1 : 0;
  const int then = pick(app, "sort", "desk/filter/sort",
                        {app.say("desk/filter/see-first"), app.say("desk/filter/newest")}, now);
  if (then == now) return;
  desk.sort = then == 1 ? DeskSort::newest : DeskSort::see_first;
  desk.filter_changed();
}

// What the filter lets through now, in words.
std::string filter_words(const App& app, FilterParts parts) {
  const Desk& desk = app.desk;
  const bool every = parts.every_family && desk.all_families;
  std::string words =
      every ? app.say("desk/filter/all-kinds") : family_name(app, desk.filter.family);
  if (desk.filter.again) {
    words += ", " + app.say(*desk.filter.again ? "desk/filter/again" : "desk/filter/first");
  }
  if (desk.filter.language) {
    const std::string& name = app.say("languages/" + *desk.filter.language);
    words += ", " + (name.empty() ? *desk.filter.language : name);
  }
  return words;
}

}  // namespace

void draw_desk_filter(App& app, FilterParts parts) {
  Desk& desk = app.desk;
  const std::string label =
      kit::fill(app.say("desk/filter/now"), {{"filter", filter_words(app, parts)}});
  desk.filter_open = kit::disclosure(*app.ui, {.id = "filter", .label = label}, desk.filter_open);
  if (!desk.filter_open) return;
  if (parts.families && desk.families().size() > 1) pick_family(app, parts.every_family);
  pick_again(app);
  pick_language(app);
  if (parts.sort) pick_sort(app);
}

}  // namespace rehale::screens
