// Set a practice: what is seldom changed. How many questions, which language, which steps.
#include <algorithm>

#include "web/screens/set_parts.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

void draw_questions(App& app) {
  SetPractice& set = app.set_practice;
  kit::heading(*app.ui, "questions-title", app.say("set/questions"), kit::Heading::section);
  kit::Choices choices{.id = "questions", .name = app.say("set/questions")};
  for (const int count : k_set_questions) {
    const std::string words = std::to_string(count);
    const std::string label =
        count == 0 ? app.say("set/as-needed") : kit::fill(app.say("set/count"), {{"count", words}});
    choices.options.push_back({.id = "questions-" + words, .label = label});
  }
  set.questions = kit::one_of(*app.ui, choices, set.questions);
}

void draw_language(App& app) {
  SetPractice& set = app.set_practice;
  kit::heading(*app.ui, "language-title", app.say("set/language"), kit::Heading::section);
  kit::Choices choices{.id = "language", .name = app.say("set/language")};
  choices.options.push_back({.id = "language-any", .label = app.say("set/any-language")});
  for (const catalog::Id& language : app.content.library().languages) {
    choices.options.push_back(
        {.id = "language-" + language, .label = app.say("languages/" + language)});
  }
  set.language = kit::one_of(*app.ui, choices, set.language);
}

// A step that can be looked at: habits that families share count as one.
struct Step {
  catalog::Id id;
  std::string name;
};

// Of all families picked; those not here yet are fetched, and their steps come later.
std::vector<Step> steps_of(App& app) {
  std::vector<Step> steps;
  for (const catalog::Id& family : set_families(app)) {
    const FamilyContent* content = app.content.family(family);
    if (content == nullptr) {
      SetPractice& set = app.set_practice;
      if (set.not_here.contains(family) || !set.asked_for.insert(family).second) continue;
      app.content.load_family(family, [&set, family](const Troubles& troubles) {
        set.asked_for.erase(family);
        if (!troubles.empty()) set.not_here.insert(family);
        shell::redraw();
      });
      continue;
    }
    for (const auto& technique : content->course->family.techniques) {
      const catalog::Id& id = technique.shared.empty() ? technique.id : technique.shared;
      const std::string* name = content->texts.find("techniques/" + technique.id + "/name");
      if (name == nullptr || std::ranges::find(steps, id, &Step::id) != steps.end()) continue;
      steps.push_back({id, *name});
    }
  }
  return steps;
}

void draw_steps(App& app) {
  kit::Ui& ui = *app.ui;
  SetPractice& set = app.set_practice;
  set.steps = kit::disclosure(ui, {.id = "steps-open", .label = app.say("set/steps")}, set.steps);
  const std::vector<Step> steps = steps_of(app);
  std::erase_if(set.focus, [&](const catalog::Id& id) {
    return set.asked_for.empty() && std::ranges::find(steps, id, &Step::id) == steps.end();
  });
  if (!set.steps) return;
  kit::paragraph(ui, "steps-tell", app.say("set/steps-tell"), kit::Ink::soft);
  if (set_families(app).empty()) return kit::paragraph(ui, "steps-none", app.say("set/pick-first"));
  if (!set.asked_for.empty()) kit::status_line(ui, "steps-wait", app.say("loading"));
  kit::Choices choices{.id = "steps", .name = app.say("set/steps")};
  std::vector<bool> chosen;
  for (const Step& step : steps) {
    choices.options.push_back({.id = "step-" + step.id, .label = step.name});
    chosen.push_back(std::ranges::find(set.focus, step.id) != set.focus.end());
  }
  if (!set.not_here.empty()) kit::paragraph(ui, "steps-not-here", app.say("set/no-steps"));
  if (steps.empty()) return;
  chosen = kit::several_of(ui, choices, chosen);
  set.focus.clear();
  for (std::size_t n = 0; n < steps.size(); ++n) {
    if (chosen[n]) set.focus.push_back(steps[n].id);
  }
}

}  // namespace

void draw_set_more(App& app) {
  SetPractice& set = app.set_practice;
  set.more = kit::disclosure(*app.ui, {.id = "more-open", .label = app.say("set/more")}, set.more);
  if (set.more) {
    draw_questions(app);
    draw_language(app);
  }
  draw_steps(app);
}

}  // namespace rehale::screens
