// A run as a code that a person can hand over: answers and times, no verdict, no name. Who has the
// same content gets the run's log back and works everything else out again.
// Must not know clocks, screens or what the answers mean.
//
// Version 1 is a CBOR list: family, content (8 bytes when it is 16 hex digits, else text), page,
// language, flags, assignment (16 bytes) or null, day, person or null, seed, recent questions (a
// bit each, lowest bit of the first byte is question 0), answers: for each question shown its index
// (practice: -1 - index), tenths of a second since the event before, then null when it was left
// open, else tenths until the answer and the answer: -1 not sure; one of several: its index;
// several: a bit each; cards: rank of the order (Lehmer code); an amount: its step in the
// question's range, or the number itself as a float.
// Version 2 has two fields more, before the answers: how many questions were set (0: none), and the
// techniques in focus (a bit each, as recent). Written for runs where an educator set either.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/civil.h"
#include "core/base/result.h"
#include "core/check/events.h"
#include "core/exchange/bytes.h"

namespace rehale::exchange {

inline constexpr int k_result_version = 2;               // 1 is still written where nothing was set
inline constexpr std::size_t k_max_code_questions = 96;  // shown in one run, practice included

using RandomId = std::array<std::uint8_t, 16>;  // 128 random bits; whoever makes one brings them

// What goes with the answers. Nothing here names a person.
struct ResultHead {
  std::string page;                     // version of the page, up to 24 letters
  Day day = 0;                          // the check was done on
  bool helped = false;                  // somebody helped
  bool again = false;                   // not this person's first check of this family
  bool made_up = false;                 // not a person: a demonstration or a trial
  std::optional<int> confidence;        // 0-4, how sure they felt; if asked
  std::optional<RandomId> assignment;   // the practice this was set by
  std::optional<std::uint32_t> person;  // random, kept on their device if they agreed: pairs runs
  friend bool operator==(const ResultHead&, const ResultHead&) = default;
};

// Times are kept to a tenth of a second, ticks in the order of the question's options, recent
// questions in the family's, begin at 0.
// The log must be one of this family and replay. Errors: "log-empty", "log-shape" (an event that a
// code cannot carry), "unknown-question", "answer-shape", "code-too-long".
struct PackedResult {
  int version = 0;
  Bytes payload;
};
[[nodiscard]] Result<PackedResult> pack_result(const ResultHead& head, const check::Log& log,
                                               const catalog::Family& family);
[[nodiscard]] Result<std::string> write_result(const ResultHead& head, const check::Log& log,
                                               const catalog::Family& family);

// One entry of the list of answers, still without meaning.
struct Entry {
  enum class Form : unsigned char { whole, fraction, nothing };
  Form form = Form::whole;
  double value = 0;
};

// What can be told without content.
struct ReadResult {
  int version = 0;
  ResultHead head;
  check::Event begin;  // family, content, language, seed, questions; recent, focus: still empty
  Bytes recent;        // a bit a question
  Bytes focus;         // a bit a technique
  std::vector<Entry> entries;
};

// Errors: those of read_envelope and read_cbor, "code-shape" with the place in the list.
[[nodiscard]] Result<ReadResult> read_result(std::string_view code);
[[nodiscard]] Result<ReadResult> unpack_result(int version, std::span<const std::uint8_t> payload);

// The log again. Refuses other content instead of guessing. Errors: "content-other" (another
// family, or questions that have changed since), "code-shape" (a question or answer there is not).
[[nodiscard]] Result<check::Log> log_of(const ReadResult& result, const catalog::Family& family,
                                        std::string_view content);

// The same for two codes of one run (handed over again, or after more practice); else different.
[[nodiscard]] std::uint64_t run_key(const ReadResult& result);

}  // namespace rehale::exchange
