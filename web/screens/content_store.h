// The content this tab has read so far: library and interface texts at the start, a family when it
// is picked. Fetches through the shell, checks through the core. Must not know drawing.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <string>
#include <vector>

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
  void load_start(std::string language, Done done);
  // Everything of one family; at once when it is there already.
  void load_family(const catalog::Id& family, Done done);

  [[nodiscard]] const catalog::Library& library() const { return library_; }
  [[nodiscard]] const catalog::Texts& texts() const { return texts_; }
  // nullptr before load_family is done.
  [[nodiscard]] const FamilyContent* family(const catalog::Id& family) const;
  // nullptr while it is still on its way.
  [[nodiscard]] std::shared_ptr<const kit::Scene> scene(const catalog::Id& family) const;

 private:
  struct Files;
  void fetch_all(const std::vector<std::string>& paths, std::function<void(const Files&)> done);
  Troubles accept_start(const Files& files);
  Troubles accept_family(const catalog::Id& family, const Files& files);
  void load_scene(const catalog::Id& family);

  std::string language_;
  catalog::Library library_;
  catalog::Texts texts_;
  std::map<catalog::Id, FamilyContent> families_;
  std::map<catalog::Id, std::shared_ptr<const kit::Scene>> scenes_;
};

}  // namespace rehale::screens
