// A question as it stands on a screen: picture, words, answers. Used by the check and by practice.
#pragma once

#include "web/screens/app.h"

namespace rehale::screens {

// Draws picture, question and its answers; what the person sets goes to app.draft. revealed: the
// answer was given, rows are locked and carry their marks.
void draw_question_body(App& app, const check::Marking* revealed);

// Something was set that can be given.
[[nodiscard]] bool has_answer(const App& app);
[[nodiscard]] check::Answer drafted_answer(const App& app);
// What to do first when nothing is set yet: path of an interface sentence.
[[nodiscard]] std::string answer_hint(const App& app);

}  // namespace rehale::screens
