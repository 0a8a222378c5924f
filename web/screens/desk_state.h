// The educator's desk between frames: the heap of results, what it adds up to, and what is on show.
// Filled chunk by chunk, so that the page stays alive. Must not know drawing, texts, the browser.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/cohort/tables.h"
#include "core/exchange/intake.h"
#include "web/screens/portions.h"

namespace rehale::screens {

enum class DeskView : unsigned char { teach, change, items };
enum class DeskSort : unsigned char { see_first, newest };

inline constexpr std::size_t k_people_a_page = 20;
// As many as the page's memory should hold, worked out from 60 to 72 MB for 100,000 (256 MB are
// allowed; never tried in full). What was read stays, and the rest is told.
inline constexpr std::size_t k_most_results = 250'000;

class Desk {
 public:
  enum class Work : unsigned char { none, reading, opening, adding };

  // ---- the heap
  exchange::Intake intake;
  Portions portions;
  std::size_t most_results = k_most_results;
  // What was read so far stays; texts that come are read with these.
  void begin_reading(exchange::Intake::Courses courses);
  // A chunk as web/js/desk.js gives it: a line "KIND PERMILLE LINE SOURCE", then the text. KIND:
  // "text", "run" (one run as JSON), "codes" (what QR codes say, one a line), "long" (a file that
  // is too long); of pictures "no-code", "large", "no-picture" (cannot be opened), "no-reader"
  // (what reads them did not arrive); "end". False: that was all.
  bool take(std::string_view chunk);
  // Seals, a few at a time: `lines_to_open` for the page's openSealed ("": all are through), then
  // what that gives.
  void begin_opening();
  [[nodiscard]] std::string lines_to_open();
  void take_opened(std::string_view lines);
  // Seals that the key did not open, when it was tried last.
  [[nodiscard]] std::size_t not_opened() const { return not_opened_; }
  // Ends reading or opening, by the person or because all is read; then add_up until it says false.
  void end_reading();
  // One part of the sums, or of putting them in order; true: there is more to do.
  bool add_up();
  void clear();

  [[nodiscard]] Work work() const { return work_; }
  [[nodiscard]] int percent() const { return permille_ / 10; }
  // Chunks of an earlier heap are told by their number.
  [[nodiscard]] int heap() const { return heap_; }

  // ---- what is on show
  cohort::Filter filter;     // its family: of the group's tables
  bool all_families = true;  // the list of people shows every family
  DeskSort sort = DeskSort::see_first;
  DeskView view = DeskView::teach;
  std::size_t page = 0;
  std::vector<std::size_t> first;  // techniques that the educator puts first, of filter.family
  bool filter_open = false, order_open = false, unread_open = false;
  std::size_t open_record = 0;
  std::string told;  // path of the sentence on how saving or printing went

  [[nodiscard]] const cohort::Summary& summary() const { return summary_; }
  // Families and languages that results are of, in order.
  [[nodiscard]] const std::vector<catalog::Id>& families() const { return families_; }
  [[nodiscard]] const std::vector<catalog::Id>& languages() const { return languages_; }
  // Records that the filter lets through, in the order asked for.
  [[nodiscard]] const std::vector<std::size_t>& people() const { return people_; }
  void filter_changed();
  void show_family(const catalog::Id& family);
  [[nodiscard]] bool lets_through(const cohort::Record& record) const;
  // The same person's check of that family before this one.
  [[nodiscard]] std::optional<std::size_t> before(std::size_t record) const;
  // The group's techniques as they are to be taught, the educator's own order first.
  [[nodiscard]] std::vector<cohort::TeachRow> teach_rows(const cohort::TechniqueTable& table) const;

 private:
  bool add_step();
  void list_families();
  void list_newest();

  Work work_ = Work::none;
  int permille_ = 0, heap_ = 0;
  std::vector<exchange::SealedFound> opening_;
  std::size_t opened_ = 0, not_opened_ = 0;
  std::size_t added_ = 0;
  int ordering_ = 0;  // the next step, when all are added up
  cohort::Summary summary_;
  std::vector<catalog::Id> families_, languages_;
  std::vector<std::size_t> see_first_, newest_, people_;
};

}  // namespace rehale::screens
