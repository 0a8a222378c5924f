// Vectors of draft-eastlake-fnv.
#include "core/base/hash.h"

#include <gtest/gtest.h>

#include <string>

namespace {

using rehale::fnv1a;

TEST(Fnv1a, gives_the_published_hashes) {
  EXPECT_EQ(fnv1a(""), 0xcbf29ce484222325ULL);
  EXPECT_EQ(fnv1a("a"), 0xaf63dc4c8601ec8cULL);
  EXPECT_EQ(fnv1a("b"), 0xaf63df4c8601f1a5ULL);
  EXPECT_EQ(fnv1a("foobar"), 0x85944171f73967e8ULL);
}

TEST(Fnv1a, goes_on_where_it_stopped) { EXPECT_EQ(fnv1a("bar", fnv1a("foo")), fnv1a("foobar")); }

TEST(Fnv1a, takes_bytes_above_127_as_unsigned) {
  const std::string bytes = "\xff";
  EXPECT_EQ(fnv1a(bytes), (0xcbf29ce484222325ULL ^ 0xffULL) * 0x100000001b3ULL);
}

}  // namespace
