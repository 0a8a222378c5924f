#include "web/screens/mend_words.h"

#include <algorithm>

namespace rehale::screens {

namespace {

const advice::ToMend& item(const App& app, int place) {
  return app.session.advice().to_mend[static_cast<std::size_t>(place)];
}

const catalog::Technique& technique(const App& app, int place) {
  return app.session.family().techniques[static_cast<std::size_t>(item(app, place).technique)];
}

}  // namespace

const std::string& mend_words(const App& app, int place, const char* what) {
  const advice::ToMend& mend = item(app, place);
  if (mend.misconception >= 0) {
    const auto& rule =
        app.session.family().misconceptions[static_cast<std::size_t>(mend.misconception)];
    return app.tell("misconceptions/" + rule.id + "/" + what);
  }
  return app.tell("techniques/" + technique(app, place).id + "/" + what);
}

const catalog::Id& habit_of(const App& app, int place) {
  const int rule = item(app, place).misconception;
  return rule >= 0 ? app.session.family().misconceptions[static_cast<std::size_t>(rule)].id
                   : technique(app, place).id;
}

std::vector<catalog::Id> mend_pose(const App& app, int place) {
  const catalog::Id& wanted = technique(app, place).id;
  for (const catalog::Question& question : app.session.family().questions) {
    const bool about = question.techniques.size() == 1 && question.techniques.front() == wanted;
    if (!about || question.kind != catalog::Kind::picture) continue;
    const auto right = std::ranges::find_if(question.options, &catalog::Option::right);
    if (right != question.options.end()) return right->pose;
  }
  return {};
}

}  // namespace rehale::screens
