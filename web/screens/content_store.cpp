#include "web/screens/content_store.h"

#include <algorithm>
#include <utility>

#include "core/catalog/content_id.h"
#include "core/procedure/check_family.h"
#include "web/screens/interface_keys.h"
#include "web/shell/host.h"

namespace rehale::screens {

struct ContentStore::Files {
  std::map<std::string, std::string> bytes;
  Troubles missing;

  [[nodiscard]] catalog::ContentFile file(const std::string& path) const {
    const auto found = bytes.find(path);
    return {path, found == bytes.end() ? std::string() : found->second};
  }
};

namespace {

const std::string k_library = "content/library.json";

std::string folder(const catalog::Id& family) { return "content/families/" + family + "/"; }

std::string words_path(const std::string& language) { return "content/text/" + language + ".json"; }

std::string words_path(const std::string& language, const catalog::Id& family) {
  return folder(family) + "text." + language + ".json";
}

bool contains(const std::vector<catalog::Id>& all, const catalog::Id& one) {
  return std::find(all.begin(), all.end(), one) != all.end();
}

void append(Troubles& all, Troubles more) {
  all.insert(all.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

// wish: "fi,pt-BR,en".
std::string first_listed(const std::vector<catalog::Id>& languages, std::string_view wish) {
  while (!wish.empty()) {
    const std::string_view one = wish.substr(0, wish.find(','));
    std::string language(one.substr(0, one.find('-')));
    if (contains(languages, language)) return language;
    wish.remove_prefix(std::min(wish.size(), one.size() + 1));
  }
  return {};
}

Troubles trouble(const Error& error, const std::string& file) {
  return {{file, error.where, error.code, error.detail}};
}

}  // namespace

void ContentStore::fetch_all(const std::vector<std::string>& paths,
                             std::function<void(const Files&)> done) {
  struct Wait {
    Files files;
    std::size_t left;
    std::function<void(const Files&)> done;
  };
  auto wait = std::make_shared<Wait>(Wait{{}, paths.size(), std::move(done)});
  for (const std::string& path : paths) {
    shell::fetch_text(path, [wait, path](Result<std::string> got) {
      if (got) {
        wait->files.bytes[path] = *std::move(got);
      } else {
        append(wait->files.missing, trouble(got.error(), path));
      }
      if (--wait->left == 0) wait->done(wait->files);
    });
  }
}

void ContentStore::load_start(const std::string& wish, Done done) {
  if (wish.substr(0, wish.find_first_of("-,")) == language_) {
    return load_start_in(language_, std::move(done));
  }
  fetch_all({k_library}, [this, wish, done = std::move(done)](const Files& files) {
    const auto library = catalog::load_library(files.file(k_library));
    const std::string best = library.value ? first_listed(library.value->languages, wish) : "";
    load_start_in(best.empty() ? language_ : best, done);
  });
}

std::string ContentStore::best_language(const std::string& wish) const {
  return first_listed(library_.languages, wish);
}

void ContentStore::load_start_in(const std::string& language, Done done) {
  language_ = language;
  fetch_all({k_library, words_path(language_)}, [this, done = std::move(done)](const Files& files) {
    Troubles troubles = files.missing.empty() ? accept_start(files) : files.missing;
    done(troubles);
  });
}

Troubles ContentStore::accept_start(const Files& files) {
  auto library = catalog::load_library(files.file(k_library));
  const catalog::ContentFile words = files.file(words_path(language_));
  auto texts = library.value ? catalog::load_library_texts(*library.value, words)
                             : catalog::load_texts(words);
  Troubles troubles = std::move(library.findings);
  append(troubles, std::move(texts.findings));
  if (texts.value) append(troubles, missing_interface_texts(*texts.value, words.path));
  if (!troubles.empty()) return troubles;
  library_ = *std::move(library.value);
  texts_ = *std::move(texts.value);
  return troubles;
}

void ContentStore::load_family(const catalog::Id& family, Done done) {
  if (families_.contains(family)) return done({});
  const std::string at = folder(family);
  fetch_all({at + "procedure.json", at + "questions.json", words_path(language_, family)},
            [this, family, language = language_, done = std::move(done)](const Files& files) {
              if (language != language_) return load_family(family, done);  // switched on the way
              done(files.missing.empty() ? accept_family(family, files) : files.missing);
            });
}

void ContentStore::load_language(const std::string& language, const catalog::Id& family,
                                 Done done) {
  std::vector<std::string> paths{words_path(language)};
  if (families_.contains(family)) paths.push_back(words_path(language, family));
  fetch_all(paths, [this, language, family, done = std::move(done)](const Files& files) {
    done(files.missing.empty() ? accept_language(language, family, files) : files.missing);
  });
}

void ContentStore::read_words(const std::string& language,
                              std::function<void(const catalog::Texts&)> done) {
  fetch_all({words_path(language)}, [this, language, done = std::move(done)](const Files& files) {
    auto texts = catalog::load_library_texts(library_, files.file(words_path(language)));
    done(texts.value ? *std::move(texts.value) : catalog::Texts());
  });
}

Troubles ContentStore::accept_language(const std::string& language, const catalog::Id& family,
                                       const Files& files) {
  const catalog::ContentFile words = files.file(words_path(language));
  auto texts = catalog::load_library_texts(library_, words);
  Troubles troubles = std::move(texts.findings);
  if (texts.value) append(troubles, missing_interface_texts(*texts.value, words.path));
  catalog::Texts told;
  const auto found = families_.find(family);
  if (found != families_.end()) {
    auto read = catalog::load_family_texts(found->second.course->family, language,
                                           files.file(words_path(language, family)));
    append(troubles, std::move(read.findings));
    if (read.value) told = *std::move(read.value);
  }
  if (!troubles.empty()) return troubles;
  language_ = language;
  texts_ = *std::move(texts.value);
  if (found != families_.end()) found->second.texts = std::move(told);
  // Other families come again when they are picked, in this language.
  std::erase_if(families_, [&family](const auto& entry) { return entry.first != family; });
  return troubles;
}

Troubles ContentStore::accept_family(const catalog::Id& family, const Files& files) {
  const std::string at = folder(family);
  const catalog::ContentFile words = files.file(words_path(language_, family));
  const catalog::FamilyFiles given{
      files.file(at + "procedure.json"), files.file(at + "questions.json"), {}, std::nullopt};
  auto loaded = catalog::load_family(library_, family, given, procedure::check_family_runs);
  Troubles troubles = std::move(loaded.findings);
  catalog::Loaded<catalog::Texts> texts;
  if (loaded.value) {
    texts = catalog::load_family_texts(*loaded.value, language_, words);
    append(troubles, std::move(texts.findings));
  }
  if (!troubles.empty()) return troubles;
  auto course = check::make_course(*std::move(loaded.value),
                                   catalog::content_id(given.procedure, given.questions));
  if (!course) return trouble(course.error(), given.questions.path);
  families_[family] = {std::make_shared<const check::Course>(*std::move(course)),
                       *std::move(texts.value)};
  return troubles;
}

void ContentStore::load_care(const catalog::Id& family, Done done) {
  if (care_.contains(family)) return done({});
  const std::string path = folder(family) + "care.json";
  fetch_all({path}, [this, family, path, done = std::move(done)](const Files& files) {
    if (!files.missing.empty()) return done(files.missing);
    auto loaded = catalog::load_care(library_, family, files.file(path));
    if (loaded.value) care_[family] = *std::move(loaded.value);
    done(loaded.findings);
  });
}

const catalog::Care* ContentStore::care(const catalog::Id& family) const {
  const auto found = care_.find(family);
  return found == care_.end() ? nullptr : &found->second;
}

void ContentStore::fetch_scenes() {
  if (std::exchange(scenes_asked_, true)) return;
  shell::fetch_text("content/scenes.txt", [this](Result<std::string> got) {
    if (got) accept_scenes(*got);  // pictures that do not come: their words still stand on the page
    shell::redraw();
  });
}

// A line "= family", then its scene, for every family.
void ContentStore::accept_scenes(std::string_view text) {
  constexpr std::string_view k_head = "= ";
  while (text.starts_with(k_head)) {
    const std::size_t line = text.find('\n');
    if (line == std::string_view::npos) return;
    const catalog::Id family(text.substr(k_head.size(), line - k_head.size()));
    const std::size_t next = text.find("\n= ", line);
    auto scene = kit::parse_scene(text.substr(line + 1, next - line - 1));
    if (scene) scenes_[family] = std::make_shared<const kit::Scene>(*std::move(scene));
    text.remove_prefix(next == std::string_view::npos ? text.size() : next + 1);
  }
}

const FamilyContent* ContentStore::family(const catalog::Id& family) const {
  const auto found = families_.find(family);
  return found == families_.end() ? nullptr : &found->second;
}

std::shared_ptr<const kit::Scene> ContentStore::scene(const catalog::Id& family) const {
  const auto found = scenes_.find(family);
  return found == scenes_.end() ? nullptr : found->second;
}

}  // namespace rehale::screens
