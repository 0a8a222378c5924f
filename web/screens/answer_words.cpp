#include "web/screens/answer_words.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace rehale::screens {

namespace {

using catalog::Id;
using catalog::Kind;
using catalog::Option;
using catalog::Question;

std::string joined(const std::string& lead, const std::string& label) {
  return kit::fill(lead, {{"answer", label}});
}

std::string amount_words(const App& app, const Question& asked, double amount) {
  const double shown = asked.kind == Kind::timing ? std::floor(amount) : amount;
  return std::to_string(static_cast<long>(shown)) + " " + unit_words(app, asked.range.unit, shown);
}

const Option* option_of(const Question& asked, const Id& id) {
  const auto found = std::ranges::find(asked.options, id, &Option::id);
  return found == asked.options.end() ? nullptr : &*found;
}

std::string part_line(const App& app, const Question& asked, const check::Given& given,
                      const Id& part) {
  const Option* option = option_of(asked, part);
  if (asked.kind == Kind::order) return app.tell("rules/" + part);
  if (option == nullptr) return {};
  if (asked.kind == Kind::timing) {
    return joined(app.say("told/stopped"), amount_words(app, asked, given.answer.amount));
  }
  if (asked.kind == Kind::numbers) {
    return joined(app.say("told/said"), amount_words(app, asked, given.answer.amount));
  }
  const std::string& label = option_words(app, asked, *option, "label");
  const bool picked = std::ranges::find(given.answer.picked, part) != given.answer.picked.end();
  if (!picked && !option->right) return joined(app.say("told/left-alone"), label);
  return joined(app.say(picked ? "told/chose" : "told/left-out"), label);
}

}  // namespace

const std::string& ask_words(const App& app, const Question& asked) {
  return app.tell("questions/" + asked.id + "/ask");
}

const std::string& option_words(const App& app, const Question& asked, const Option& option,
                                const char* what) {
  return app.tell("questions/" + asked.id + "/options/" + option.id + "/" + what);
}

const std::string& unit_words(const App& app, const std::string& unit, double amount) {
  return app.say("units/" + unit + (amount == 1 ? "/one" : "/many"));
}

std::vector<std::string> answer_lines(const App& app, const check::Given& given,
                                      const std::vector<Id>& parts) {
  const Question& asked = app.question(given.question);
  std::vector<std::string> lines;
  if (asked.kind == Kind::order) lines.push_back(app.say("told/order"));
  for (const Id& part : parts) {
    std::string line = part_line(app, asked, given, part);
    if (!line.empty()) lines.push_back(std::move(line));
  }
  return lines;
}

std::vector<std::string> why_lines(const App& app, int question, const check::Marking& marking) {
  const Question& asked = app.question(question);
  std::vector<std::string> lines;
  std::set<Id> said;
  for (const check::Mark& mark : marking.marks) {
    if (mark.met != marking.right || !said.insert(mark.part).second) continue;
    const Option* option = option_of(asked, mark.part);
    if (asked.kind == Kind::order && !marking.right)
      lines.push_back(app.tell("rules/" + mark.part));
    if (asked.kind == Kind::several && marking.right && !option->right) continue;
    if (option != nullptr) lines.push_back(option_words(app, asked, *option, "why"));
  }
  if (asked.kind == Kind::order && marking.right) lines.push_back(app.say("practice/order-right"));
  return lines;
}

}  // namespace rehale::screens
