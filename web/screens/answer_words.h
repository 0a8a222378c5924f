// Answers in words: the sentences of a question, what was given, and why it is as it is.
// Must not draw.
#pragma once

#include "web/screens/app.h"

namespace rehale::screens {

[[nodiscard]] const std::string& ask_words(const App& app, const catalog::Question& asked);
// what: "label" or "why".
[[nodiscard]] const std::string& option_words(const App& app, const catalog::Question& asked,
                                              const catalog::Option& option, const char* what);
// "seconds", "puffs"…, one or many.
[[nodiscard]] const std::string& unit_words(const App& app, const std::string& unit, double amount);

// "You chose: Fast and hard", "You left out: …", "You stopped after 4 seconds": what in this answer
// speaks about something, `parts` as in advice::Because.
[[nodiscard]] std::vector<std::string> answer_lines(const App& app, const check::Given& given,
                                                    const std::vector<catalog::Id>& parts);

// Why, for what was given: explanations of the marks not met; of the right one when all were.
[[nodiscard]] std::vector<std::string> why_lines(const App& app, int question,
                                                 const check::Marking& marking);

}  // namespace rehale::screens
