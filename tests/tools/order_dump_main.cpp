// rehale_order_dump ASSETS_DIR: every order question of the shipped families in every order of its
// cards, with our marks, for tests/reference/order/families.py to compare with a general graph
// library. A line:
//   family question cards-in-order right|broken moves broken-pairs-of-the-closed-order
#include <algorithm>
#include <cstdio>

#include "core/procedure/check_family.h"
#include "core/procedure/grade.h"
#include "tests/support/files.h"

namespace {

using namespace rehale;

void dump(const catalog::Family& family, const catalog::Question& question) {
  auto answer = question.actions;
  std::sort(answer.begin(), answer.end());
  const auto order = procedure::card_order(family, question);
  do {
    const auto grade = procedure::grade_order(family, question, answer);
    if (!grade || !order) return;
    std::string cards;
    std::vector<int> list;
    for (const auto& id : answer) {
      cards += (cards.empty() ? "" : ",") + id;
      list.push_back(
          static_cast<int>(std::find(question.actions.begin(), question.actions.end(), id) -
                           question.actions.begin()));
    }
    std::printf("%s %s %s %s %zu %zu\n", family.id.c_str(), question.id.c_str(), cards.c_str(),
                grade->right ? "right" : "broken", grade->moves.size(),
                procedure::violations(*order, list).size());
  } while (std::next_permutation(answer.begin(), answer.end()));
}

}  // namespace

int main(int count, char** arguments) {
  if (count != 2) return 2;
  const std::string folder = std::string(arguments[1]) + '/';
  std::vector<catalog::Finding> missing;
  const auto library =
      catalog::load_library(support::read_content(folder, "library.json", missing));
  if (!library.value) return 1;
  for (const auto& id : library.value->families) {
    const auto files = support::read_family(folder, *library.value, id, missing);
    const auto family =
        catalog::load_family(*library.value, id, files, procedure::check_family_runs);
    if (!family.value) return 1;
    for (const auto& question : family.value->questions)
      if (question.kind == catalog::Kind::order) dump(*family.value, question);
  }
  return 0;
}
