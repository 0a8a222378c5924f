// rehale_digest: one line a family and seed with a hash over every bit of the posterior and of the
// questions asked. ci/test holds the native lines against those of the WASM build.
#include <bit>
#include <cinttypes>
#include <cstdio>

#include "core/base/hash.h"
#include "tests/support/courses.h"

namespace {

std::uint64_t digest(const rehale::check::Run& run) {
  std::uint64_t hash = rehale::k_fnv_start;
  for (const double p : run.posterior().states()) {
    const auto bits = std::bit_cast<std::uint64_t>(p);
    char bytes[sizeof bits];
    for (std::size_t n = 0; n < sizeof bits; ++n) bytes[n] = static_cast<char>(bits >> (8 * n));
    hash = rehale::fnv1a({bytes, sizeof bytes}, hash);
  }
  for (const auto& event : run.log()) hash = rehale::fnv1a(event.question, hash);
  return hash;
}

}  // namespace

int main() {
  for (const auto& family : rehale::support::shipped_families()) {
    const rehale::check::Course* course = rehale::support::shipped_course(family);
    if (course == nullptr) return 1;
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
      const auto place = static_cast<std::size_t>(seed % course->family.techniques.size());
      const auto lacks = course->family.techniques[place].id;
      const auto run = rehale::support::scripted_run(*course, {.lacks = {lacks}, .seed = seed});
      std::printf("%s %" PRIu64 " %016" PRIx64 "\n", family.c_str(), seed, digest(run));
    }
  }
  return 0;
}
