// Seeds of the fuzzers and everything they ever found, run as plain tests (ci/fuzz adds to found/).
#include <gtest/gtest.h>

#include <algorithm>
#include <cstring>
#include <memory>
#include <string>

#include "tests/fuzz/targets.h"
#include "tests/support/files.h"
#include "tests/support/fixture.h"

namespace rehale::fuzz {
namespace {

std::vector<std::uint8_t> from_hex(std::string_view hex) {
  std::vector<std::uint8_t> bytes;
  const auto digit = [](char c) { return c <= '9' ? c - '0' : c - 'a' + 10; };
  for (std::size_t n = 0; n + 1 < hex.size(); n += 2) {
    bytes.push_back(static_cast<std::uint8_t>(digit(hex[n]) * 16 + digit(hex[n + 1])));
  }
  return bytes;
}

// One input a line; as it is, and cut off at 40 places.
int run_lines(const Target& target, const std::string& lines) {
  int count = 0;
  for (std::size_t at = 0; at < lines.size(); ++count) {
    const auto end = std::min(lines.find('\n', at), lines.size());
    const auto bytes = from_hex(std::string_view(lines).substr(at, end - at));
    for (std::size_t part = 0; part <= 40; ++part) {
      const std::size_t size = bytes.size() * part / 40;
      const auto exact = std::make_unique<std::uint8_t[]>(size);
      std::copy_n(bytes.begin(), size, exact.get());
      target.run({exact.get(), size});
    }
    at = end + 1;
  }
  return count;
}

TEST(FuzzCorpus, seeds_and_all_that_was_ever_found_run_to_the_end) {
  for (const Target& target : k_targets) {
    const std::string name = std::string(target.name) + ".txt";
    const auto seeds = support::read_file(support::source_path("tests/fuzz/seeds/" + name));
    ASSERT_TRUE(seeds) << name;
    EXPECT_GE(run_lines(target, *seeds), 3) << name;
    const auto found = support::read_file(support::source_path("tests/fuzz/found/" + name));
    run_lines(target, found.value_or(""));
  }
}

}  // namespace
}  // namespace rehale::fuzz
