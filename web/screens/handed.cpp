// A result that came in a link: read once, worked out again from its answers, shown as what it is.
#include <algorithm>

#include "core/exchange/sealed_code.h"
#include "web/screens/dates.h"
#include "web/screens/screens.h"
#include "web/shell/host.h"

namespace rehale::screens {

void draw_handed(App& app) {
  if (!app.handed) return;
  kit::notice(*app.ui, "handed",
              kit::fill(app.say("hand/handed"),
                        {{"family", app.tell("name")},
                         {"date", date_words(app.content.texts(), app.handed->day)}}));
  if (app.handed->made_up) kit::notice(*app.ui, "made-up", app.say("hand/made-up"));
}

void App::show_link_trouble(const char* kind) {
  session.clear();
  handed.reset();
  trouble = {kind, "", {}, true};
  where = Where::trouble;
}

void App::show_unread(const Error& error) {
  show_link_trouble(error.code == "code-newer" ? "trouble/link-newer" : "trouble/link");
}

void App::open_sealed(const std::string& code) {
  const auto sealed = exchange::read_sealed(code);
  if (!sealed) return show_unread(sealed.error());
  show_link_trouble("asked/sealed-link");
}

void App::open_handed(const std::string& code) {
  const auto result = exchange::read_result(code);
  if (!result) return show_unread(result.error());
  const auto& families = content.library().families;
  if (std::ranges::find(families, result->begin.family) == families.end())
    return show_link_trouble("trouble/link-other");
  picked_ = result->begin.family;
  where = Where::loading;
  content.load_family(picked_, [this, result = *result](const Troubles& troubles) {
    if (!troubles.empty()) {
      show_trouble("trouble/content", troubles);
      trouble.can_go_on = true;
    } else {
      show_handed(result);
    }
    shell::redraw();
  });
}

void App::show_handed(const exchange::ReadResult& result) {
  const auto& course = content.family(picked_)->course;
  const auto log = exchange::log_of(result, course->family, course->content);
  if (!log) {
    return show_link_trouble(log.error().code == "content-other" ? "trouble/link-other"
                                                                 : "trouble/link");
  }
  if (!session.adopt(course, *log)) return show_link_trouble("trouble/link");
  handed = result.head;
  where = Where::result;
}

}  // namespace rehale::screens
