#include "web/screens/slips.h"

#include "web/screens/dates.h"

namespace rehale::screens {

namespace {

class Lines {
 public:
  explicit Lines(const catalog::Texts& texts) : texts_(texts) {}

  void add(const char* kind, const std::string& text) {
    all_ += std::string(kind) + ' ' + text + '\n';
  }
  void say(const char* kind, const std::string& path, const std::string& date = {}) {
    const std::string* text = texts_.find(path);
    if (text != nullptr) add(kind, kit::fill(*text, {{"date", date}}));
  }
  [[nodiscard]] std::string take() { return std::move(all_); }

 private:
  const catalog::Texts& texts_;
  std::string all_;
};

}  // namespace

std::string write_slip(const SetPractice& set, const catalog::Texts& texts) {
  Lines lines(texts);
  lines.add("qr", set.link);
  lines.say("title", "set/slip/title");
  if (set.made.due) lines.say("line", "set/slip/until", date_words(texts, *set.made.due));
  lines.say("name", "set/slip/name");
  for (const char* path : {"set/slip/steps/1", "set/slip/steps/2", "set/slip/steps/3"})
    lines.say("step", path);
  lines.say("foot", "set/slip/danger");
  return lines.take();
}

std::string write_slips(const SetPractice& set, const catalog::Texts& texts) {
  Lines lines(texts);
  lines.add("count", std::to_string(k_slips_a_sheet));
  lines.add("qr", set.link);
  lines.say("title", "set/slip/short");
  if (set.made.due) lines.say("line", "set/slip/by", date_words(texts, *set.made.due));
  lines.say("name", "set/slip/name");
  return lines.take();
}

}  // namespace rehale::screens
