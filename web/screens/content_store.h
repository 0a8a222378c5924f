// The content this tab has read so far: library and interface texts at the start, a family when it
// is picked. Fetches through the shell, checks through the core. Must not know drawing.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "core/catalog/care.h"
#include "core/catalog/load.h"
#include "core/check/run.h"
#include "web/kit/illustration.h"

namespace rehale::screens {

struct FamilyContent {
  std::shared_ptr<const check::Course> course;
  catalog::Texts texts;
};

// Why there is nothing to show, file by file; empty: all is well.
using Troubles = std::vector<catalog::Finding>;

class ContentStore {
 public:
  using Done = std::function<void(const Troubles&)>;

  // content/library.json, content/text/<language>.json and the drawings and names of every family.
  // `wish` as a browser says it ("pt-BR,en"): the first that the library lists; else English.
  void load_start(const std::string& wish, Done done);
  // The words of another language, also those of this family if it is there. All or nothing: until
  // they are here, and when they do not come, everything stays in the language it is in.
  void load_language(const std::string& language, const catalog::Id& family, Done done);
  // The interface words of a language, to be used beside those on show; empty when they do not
  // come.
  void read_words(const std::string& language, std::function<void(const catalog::Texts&)> done);
  // Everything of one family; at once when it is there already.
  void load_family(const catalog::Id& family, Done done);

  // The first of these wishes that the library lists; "" when it lists none.
  [[nodiscard]] std::string best_language(const std::string& wish) const;
  // The numbers about counting and care of one family; at once when they are there already.
  void load_care(const catalog::Id& family, Done done);
  // nullptr before load_care is done.
  [[nodiscard]] const catalog::Care* care(const catalog::Id& family) const;

  [[nodiscard]] const catalog::Library& library() const { return library_; }
  [[nodiscard]] const catalog::Texts& texts() const { return texts_; }
  [[nodiscard]] const std::string& language() const { return language_; }
  // nullptr before load_family is done.
  [[nodiscard]] const FamilyContent* family(const catalog::Id& family) const;
  void fetch_scenes();  // all of them, once
  // nullptr while it is still on its way.
  [[nodiscard]] std::shared_ptr<const kit::Scene> scene(const catalog::Id& family) const;

 private:
  struct Files;
  void fetch_all(const std::vector<std::string>& paths, std::function<void(const Files&)> done);
  void load_start_in(const std::string& language, Done done);
  Troubles accept_start(const Files& files);
  Troubles accept_family(const catalog::Id& family, const Files& files);
  void accept_scenes(std::string_view text);
  Troubles accept_language(const std::string& language, const catalog::Id& family,
                           const Files& files);

  std::string language_ = "en";
  catalog::Library library_;
  catalog::Texts texts_;
  std::map<catalog::Id, FamilyContent> families_;
  std::map<catalog::Id, catalog::Care> care_;
  bool scenes_asked_ = false;
  std::map<catalog::Id, std::shared_ptr<const kit::Scene>> scenes_;
};

}  // namespace rehale::screens
