// Set a practice: results sealed, so that only the holder of a key file can read them. The key is
// made and kept by the person; this page knows its public half, for as long as the tab lives.
#include <algorithm>

#include "web/screens/set_parts.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

std::optional<exchange::PublicKey> key_of(const std::string& text) {
  const auto bytes = exchange::from_base64url(text);
  exchange::PublicKey key;
  if (!bytes || bytes->size() != key.size()) return {};
  std::ranges::copy(*bytes, key.begin());
  return key;
}

void ask_for_key(App& app, const char* service, const std::string& words, const char* done) {
  shell::ask_page(service, words, [&app, done](const Result<std::string>& answer) {
    if (answer && answer->empty()) return;  // called off
    const auto key = answer ? key_of(*answer) : std::nullopt;
    if (key) {
      app.set_practice.key = key;
      app.ui->focus("no-seal");  // stands where what was pressed has gone
    }
    app.set_practice.told = key ? done : "set/no-key";
    app.ui->say(app.say(app.set_practice.told));
    shell::redraw();
  });
}

void draw_with_key(App& app) {
  kit::Ui& ui = *app.ui;
  const std::string mark = mark_of(*app.set_practice.key);
  kit::paragraph(ui, "key", kit::fill(app.say("set/key"), {{"mark", mark}}));
  if (!kit::quiet_button(ui, {.id = "no-seal", .label = app.say("set/no-seal")})) return;
  app.set_practice.key.reset();
  app.set_practice.told.clear();
}

void draw_without_key(App& app) {
  kit::Ui& ui = *app.ui;
  kit::notice(ui, "key-lost", app.say("set/key-lost"));
  if (kit::quiet_button(ui, {.id = "make-key", .label = app.say("set/make-key")})) {
    ask_for_key(app, "makeKey", iso_date(shell::today()) + '\n' + passphrase_words(app, true),
                "set/key-made");
  }
  if (kit::quiet_button(ui, {.id = "use-key", .label = app.say("set/use-key")}))
    ask_for_key(app, "useKey", "", "set/key-used");
}

}  // namespace

std::string passphrase_words(const App& app, bool is_new) {
  std::string lines;
  const auto add = [&](const char* kind, const char* which) {
    lines += std::string(kind) + ' ' + app.say(std::string("set/dialog/") + which) + '\n';
  };
  add("title", is_new ? "title" : "unlock-title");
  add("lead", is_new ? "lead" : "unlock-lead");
  for (const char* kind : {"first", "again", "short", "differ", "wrong", "go", "cancel"})
    add(kind, kind);
  return lines;
}

std::string mark_of(const exchange::PublicKey& key) {
  const std::string letters = exchange::to_base64url(key);
  return letters.substr(letters.size() - 8, 4) + ' ' + letters.substr(letters.size() - 4);
}

void draw_set_seal(App& app) {
  kit::Ui& ui = *app.ui;
  SetPractice& set = app.set_practice;
  set.seal = kit::disclosure(ui, {.id = "seal-open", .label = app.say("set/seal")}, set.seal);
  if (!set.seal) {
    if (set.key) kit::caption(ui, "sealed", app.say("set/sealed"));
    return;
  }
  kit::paragraph(ui, "seal-tell", app.say("set/seal-tell"), kit::Ink::soft);
  if (set.key) draw_with_key(app);
  else draw_without_key(app);
}

}  // namespace rehale::screens
