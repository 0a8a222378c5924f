#include "web/screens/question_body.h"

#include <algorithm>

#include "web/screens/answer_words.h"
#include "web/screens/pictures.h"

namespace rehale::screens {

namespace {

using catalog::Kind;
using catalog::Option;
using catalog::Question;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

// One row as the practice shows it: what was picked well, what was not, what was left out.
kit::Mark mark_for(const Option& option, bool picked, bool revealed) {
  if (!revealed) return kit::Mark::none;
  if (option.right) return picked ? kit::Mark::going_well : kit::Mark::missed;
  return picked ? kit::Mark::to_mend : kit::Mark::none;
}

void draw_one(App& app, const Question& asked, const std::vector<int>& shown, bool revealed) {
  kit::Choices rows{"answers", ask_words(app, asked), {}, revealed};
  for (std::size_t n = 0; n < shown.size(); ++n) {
    const Option& option = asked.options[at(shown[n])];
    const bool picked = app.draft.chosen == static_cast<int>(n);
    rows.options.push_back({option.id, option_words(app, asked, option, "label"),
                            mark_for(option, picked, revealed), "", ""});
    if (revealed && option.right && !picked)
      rows.options.back().mark_words = app.say("practice/this-way");
  }
  app.draft.chosen = kit::one_of(*app.ui, rows, app.draft.chosen);
}

void draw_several(App& app, const Question& asked, const std::vector<int>& shown, bool revealed) {
  kit::caption(*app.ui, "all-that-apply", app.say("question/all-that-apply"));
  kit::Choices rows{"answers", ask_words(app, asked), {}, revealed};
  for (std::size_t n = 0; n < shown.size(); ++n) {
    const Option& option = asked.options[at(shown[n])];
    rows.options.push_back({option.id, option_words(app, asked, option, "label"),
                            mark_for(option, app.draft.ticked[n], revealed), "", ""});
  }
  app.draft.ticked = kit::several_of(*app.ui, rows, app.draft.ticked);
}

void draw_pictures(App& app, const Question& asked, const std::vector<int>& shown, bool revealed) {
  kit::PictureChoices cards{"answers", ask_words(app, asked), {}, revealed};
  for (std::size_t n = 0; n < shown.size(); ++n) {
    const Option& option = asked.options[at(shown[n])];
    const bool picked = app.draft.chosen == static_cast<int>(n);
    cards.options.push_back({option.id, option_words(app, asked, option, "label"),
                             scene_picture(app, app.session.family_id(), option.pose),
                             mark_for(option, picked, revealed), ""});
    if (revealed && option.right && !picked)
      cards.options.back().mark_words = app.say("practice/this-way");
  }
  app.draft.chosen = kit::one_picture_of(*app.ui, cards, app.draft.chosen);
}

void draw_order(App& app, const Question& asked, bool revealed) {
  kit::Ordering cards{"answers", ask_words(app, asked), {}, revealed};
  for (const catalog::Id& action : app.draft.order) {
    cards.cards.push_back({action, app.tell("actions/" + action + "/label"), kit::Mark::none, ""});
  }
  app.draft.order = kit::ordering(*app.ui, cards).order;
}

void draw_amount(App& app, const Question& asked, bool revealed) {
  if (asked.kind == Kind::timing) {
    const double longest_ms = 1000 * asked.range.max;
    app.draft.timing =
        kit::timing_pad(*app.ui, {"answers", ask_words(app, asked), 10'000, longest_ms, revealed},
                        app.draft.timing);
    return;
  }
  const kit::Stepper stepper{
      "answers",       ask_words(app, asked), unit_words(app, asked.range.unit, app.draft.number),
      asked.range.min, asked.range.max,       asked.range.step,
      revealed};
  app.draft.number = kit::stepper(*app.ui, stepper, app.draft.number);
}

}  // namespace

void draw_question_body(App& app, const check::Marking* revealed) {
  const Question& asked = app.question(app.draft.question);
  const bool done = revealed != nullptr;
  if (!asked.pose.empty()) {
    kit::picture(*app.ui, {.id = "picture",
                           .alternative = pose_words(app, asked.pose),
                           .draw = moving_picture(app, app.session.family_id(), asked.pose)});
  }
  kit::heading(*app.ui, "ask", ask_words(app, asked), kit::Heading::question);
  const std::vector<int> shown = app.session.run().shown_order(app.draft.question);
  switch (asked.kind) {
    case Kind::one:
      return draw_one(app, asked, shown, done);
    case Kind::several:
      return draw_several(app, asked, shown, done);
    case Kind::picture:
      return draw_pictures(app, asked, shown, done);
    case Kind::order:
      return draw_order(app, asked, done);
    case Kind::timing:
    case Kind::numbers:
      return draw_amount(app, asked, done);
  }
}

bool has_answer(const App& app) {
  const Question& asked = app.question(app.draft.question);
  switch (asked.kind) {
    case Kind::one:
    case Kind::picture:
      return app.draft.chosen >= 0;
    case Kind::several:
      return std::ranges::find(app.draft.ticked, true) != app.draft.ticked.end();
    case Kind::timing:
      return app.draft.timing.phase == kit::Timing::Phase::done;
    case Kind::order:
    case Kind::numbers:
      return true;
  }
  return false;
}

std::string answer_hint(const App& app) {
  const Kind kind = app.question(app.draft.question).kind;
  if (kind == Kind::several) return "question/tick-first";
  return kind == Kind::timing ? "question/time-first" : "question/pick-first";
}

check::Answer drafted_answer(const App& app) {
  const Question& asked = app.question(app.draft.question);
  const std::vector<int> shown = app.session.run().shown_order(app.draft.question);
  check::Answer answer;
  if (asked.kind == Kind::order) {
    answer.picked = app.draft.order;
  } else if (asked.kind == Kind::several) {
    for (std::size_t n = 0; n < shown.size(); ++n) {
      if (app.draft.ticked[n]) answer.picked.push_back(asked.options[at(shown[n])].id);
    }
  } else if (asked.kind == Kind::timing) {
    answer.amount = app.draft.timing.measured_ms / 1000;
  } else if (asked.kind == Kind::numbers) {
    answer.amount = app.draft.number;
  } else {
    answer.picked = {asked.options[at(shown[at(app.draft.chosen)])].id};
  }
  return answer;
}

}  // namespace rehale::screens
