// A heap of results as an educator gets them: codes and links in any text, files of runs. Chunk by
// chunk, each result is read, worked out again and kept once; what cannot be read is told with its
// line and why, and the rest goes on. Must not know files, clocks, screens.
#pragma once

#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "core/cohort/record.h"
#include "core/exchange/result_code.h"

namespace rehale::exchange {

// Where in the heap: a text somebody pasted, or a file by its name.
struct Place {
  std::string source;
  std::size_t line = 0;  // counted from 1; 0: the whole file
  bool scanned = false;  // then `line` counts the QR codes of a picture, or of the camera
};

struct Unread {
  Place place;
  std::string start;  // of the code, a few letters to find it by
  Error error;
};

// A result that only its educator's key opens.
struct SealedFound {
  Place place;
  std::string code;
};

// More are counted, not listed.
inline constexpr std::size_t k_listed_unread = 200, k_listed_sealed = 20000;

class Intake {
 public:
  using Courses = std::vector<std::shared_ptr<const check::Course>>;

  // Starts anew, with the content that results are read with.
  void open(Courses courses);
  [[nodiscard]] bool is_open() const { return !courses_.empty(); }

  // Whole lines of a text. `place.line`: which line of the source the first one is.
  void add_text(const Place& place, std::string_view text);
  // What QR codes say, each in a line of its own. One that holds no code of ours is told, too.
  void add_scanned(const std::string& source, std::string_view texts);
  // One run as JSON (what exportRun gives). It says no day: its record has day 0.
  void add_run_file(const Place& place, std::string_view text);
  // The one way from a result to a record: from a code, a file, or an opened seal. `code` is kept
  // to open the person's own page with; without one it is written anew. Errors: "content-other",
  // "code-shape", and those of check::read_through.
  [[nodiscard]] Result<void> add_result(const ReadResult& result, std::string code = {});
  // Hands out what waits sealed; each of them comes back by add_opened.
  [[nodiscard]] std::vector<SealedFound> take_sealed();
  // What a key gave for a seal. Nothing: that key does not open it, and it waits on for another.
  void add_opened(SealedFound found, std::span<const std::uint8_t> opened);
  // Notes that something could not be read.
  void add_unread(const Place& place, std::string_view code, Error error);

  [[nodiscard]] const std::vector<cohort::Record>& records() const { return records_; }
  // The record's code; read_result and log_of take it.
  [[nodiscard]] const std::string& code(std::size_t record) const { return codes_[record]; }
  [[nodiscard]] std::size_t copies() const { return copies_; }
  [[nodiscard]] const std::vector<Unread>& unread() const { return unread_; }
  [[nodiscard]] std::size_t unread_count() const { return unread_count_; }
  [[nodiscard]] const std::vector<SealedFound>& sealed() const { return sealed_; }
  [[nodiscard]] std::size_t sealed_count() const { return sealed_count_; }
  // Lines that hold words, but nothing that looks like a code.
  [[nodiscard]] std::size_t lines_without() const { return lines_without_; }
  [[nodiscard]] std::shared_ptr<const check::Course> course(std::string_view family) const;

 private:
  void add_sealed(const Place& place, std::string_view code);
  void keep_sealed(SealedFound found);
  void keep(cohort::Record record, std::string code);

  Courses courses_;
  std::vector<cohort::Record> records_;
  std::vector<std::string> codes_;
  std::unordered_map<std::uint64_t, std::size_t> by_key_;
  std::vector<Unread> unread_;
  std::vector<SealedFound> sealed_;
  std::size_t copies_ = 0, unread_count_ = 0, sealed_count_ = 0, lines_without_ = 0;
};

}  // namespace rehale::exchange
