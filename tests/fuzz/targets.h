// What is fuzzed: every reader of bytes from outside. Each takes any bytes; a broken promise ends
// the program. ci/fuzz drives them with libFuzzer, the corpus test runs what was ever found.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>

namespace rehale::fuzz {

using Input = std::span<const std::uint8_t>;

void code(Input input);        // pasted text: codes are found in it and read
void result(Input input);      // what is inside a result code, then its log and replay
void assignment(Input input);  // what is inside an assignment code
void sealed(Input input);      // what is inside a sealed code
void care(Input input);        // what is inside a code of one inhaler's numbers
void kept(Input input);        // what a device kept for a person
void cbor(Input input);
void run_json(Input input);
void content(Input input);   // files of content
void scene(Input input);     // a compiled drawing
void takes(Input input);     // run-throughs beside a run's events
void tally(Input input);     // what a shared device counted today
void settings(Input input);  // what the person chose, as it is kept
void heap(Input input);      // what an educator gives the desk, piece by piece

struct Target {
  std::string_view name;
  void (*run)(Input input);
};
inline constexpr Target k_targets[] = {
    {"code", code},         {"result", result},     {"assignment", assignment},
    {"sealed", sealed},     {"care", care},         {"kept", kept},
    {"cbor", cbor},         {"run_json", run_json}, {"content", content},
    {"scene", scene},       {"takes", takes},       {"tally", tally},
    {"settings", settings}, {"heap", heap}};

}  // namespace rehale::fuzz
