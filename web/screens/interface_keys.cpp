#include "web/screens/interface_keys.h"

namespace rehale::screens {

const std::vector<std::string>& interface_keys() {
  static const std::vector<std::string> keys{
      "loading", "families/spray/name", "families/spray/tell", "families/powder-lever/name",
      "families/powder-lever/tell", "families/powder-cover/name", "families/powder-cover/tell",
      "families/soft-mist/name", "families/soft-mist/tell", "choose/title", "choose/ask",
      "choose/lead", "choose/unknown", "choose/danger", "choose/limits", "finder-end/title",
      "finder-end/looks-like", "finder-end/take-it", "finder-end/show-all", "finder-end/unknown",
      "finder-end/ask-someone", "ready/title", "ready/lead", "ready/length", "ready/honest",
      "ready/empty-hands", "ready/start", "question/title", "question/progress", "question/next",
      "question/unsure", "question/pick-first", "question/tick-first", "question/time-first",
      "question/all-that-apply", "leave/title", "leave/tell", "leave/stay", "leave/go",
      "result/title", "result/heading", "result/lead-mend", "result/lead-ready",
      "result/lead-open", "result/show-me", "result/later", "result/differing",
      "result/cannot-tell", "result/limits", "result/mend-first", "result/start-over",
      "mend/title", "mend/progress", "mend/told", "mend/dose", "mend/how", "mend/try",
      "mend/next", "mend/done", "mend/practised", "told/chose", "told/left-out",
      "told/left-alone", "told/stopped", "told/said", "told/order", "units/s/one", "units/s/many",
      "units/days/one", "units/days/many", "units/doses/one", "units/doses/many",
      "units/puffs/one", "units/puffs/many", "practice/title", "practice/check", "practice/go-on",
      "practice/another", "practice/this-way", "practice/one-way", "practice/order-right",
      "practice/unsure", "practice/say-well", "practice/say-mend", "about/title", "about/close",
      "about/danger/title", "about/danger/1", "about/danger/2", "about/danger/3",
      "about/danger/4", "about/danger/5", "about/what/title", "about/what/1", "about/what/2",
      "about/what/3", "about/limits/title", "about/limits/1", "about/limits/2", "about/limits/3",
      "about/safe/title", "about/safe/1", "about/safe/2", "about/safe/3", "about/safe/4",
      "about/safe/5", "about/private/title", "about/private/1", "about/private/2",
      "trouble/content/title", "trouble/content/lead", "trouble/run/title", "trouble/run/lead",
      "trouble/seed/title", "trouble/seed/lead", "trouble/reload", "trouble/go-on", "kit/back",
      "kit/help", "kit/look", "kit/close", "kit/look-title", "kit/ground", "kit/ground-system",
      "kit/ground-light", "kit/ground-dark", "kit/text-size", "kit/text-size-value",
      "kit/more-contrast", "kit/going-well", "kit/to-mend", "kit/missed", "kit/caution",
      "kit/move-up", "kit/move-down", "kit/pick-up", "kit/put-here", "kit/put-back",
      "kit/picked-hint", "kit/moved", "kit/undo-move", "kit/less", "kit/more", "kit/timer-start",
      "kit/timer-stop", "kit/timer-running", "kit/timer-result", "kit/timer-result-one",
      "kit/timer-again"};
  return keys;
}

std::vector<catalog::Finding> missing_interface_texts(const catalog::Texts& texts,
                                                      const std::string& file) {
  std::vector<catalog::Finding> findings;
  for (const std::string& key : interface_keys()) {
    if (texts.find(key) != nullptr) continue;
    findings.push_back({file, "/" + key, "missing-text", "this sentence is shown and must be there"});
  }
  return findings;
}

}  // namespace rehale::screens
