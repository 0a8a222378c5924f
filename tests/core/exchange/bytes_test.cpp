// base64url and the check value against their published values.
#include "core/exchange/bytes.h"

#include <gtest/gtest.h>

#include "core/base/rng.h"

namespace rehale::exchange {
namespace {

Bytes bytes_of(std::string_view text) { return {text.begin(), text.end()}; }

// RFC 4648 section 10, without the padding that section 5 lets go; the last row is "-" and "_".
TEST(Base64url, gives_the_values_of_rfc_4648) {
  const std::pair<Bytes, const char*> table[] = {{bytes_of(""), ""},
                                                 {bytes_of("f"), "Zg"},
                                                 {bytes_of("fo"), "Zm8"},
                                                 {bytes_of("foo"), "Zm9v"},
                                                 {bytes_of("foob"), "Zm9vYg"},
                                                 {bytes_of("fooba"), "Zm9vYmE"},
                                                 {bytes_of("foobar"), "Zm9vYmFy"},
                                                 {{0xfb, 0xff, 0xbf}, "-_-_"},
                                                 // RFC 4648 section 9
                                                 {{0x14, 0xfb, 0x9c, 0x03, 0xd9, 0x7e}, "FPucA9l-"},
                                                 {{0x14, 0xfb, 0x9c, 0x03, 0xd9}, "FPucA9k"},
                                                 {{0x14, 0xfb, 0x9c, 0x03}, "FPucAw"}};
  for (const auto& [bytes, text] : table) {
    EXPECT_EQ(to_base64url(bytes), text);
    const auto back = from_base64url(text);
    ASSERT_TRUE(back) << text;
    EXPECT_EQ(*back, bytes) << text;
  }
}

TEST(Base64url, anything_else_is_refused_with_its_place) {
  EXPECT_EQ(from_base64url("Zm9v+g").error().where, "letter 5");
  EXPECT_EQ(from_base64url("Zg==").error().code, "code-letter");
  EXPECT_EQ(from_base64url("Zm9 v").error().where, "letter 4");
  EXPECT_EQ(from_base64url("Zm9vY").error().code, "code-length");  // six bits make no byte
  EXPECT_EQ(from_base64url("Zh").error().code, "code-length");  // stray bits: two texts for a byte
}

TEST(Base64url, random_bytes_come_back) {
  Rng rng(7);
  for (std::size_t size = 0; size < 200; ++size) {
    Bytes bytes(size);
    for (auto& byte : bytes) byte = static_cast<std::uint8_t>(rng.next());
    const auto back = from_base64url(to_base64url(bytes));
    ASSERT_TRUE(back);
    EXPECT_EQ(*back, bytes);
  }
}

// The check value of "123456789" is that of the catalogues of CRCs (from memory); the four others
// are RFC 3720 appendix B.4.
TEST(Crc32c, gives_the_published_values) {
  EXPECT_EQ(crc32c(bytes_of("123456789")), 0xE3069283U);
  EXPECT_EQ(crc32c(Bytes(32, 0)), 0x8A9136AAU);
  EXPECT_EQ(crc32c(Bytes(32, 0xff)), 0x62A8AB43U);
  Bytes up(32), down(32);
  for (std::size_t n = 0; n < 32; ++n) {
    up[n] = static_cast<std::uint8_t>(n);
    down[n] = static_cast<std::uint8_t>(31 - n);
  }
  EXPECT_EQ(crc32c(up), 0x46DD794EU);
  EXPECT_EQ(crc32c(down), 0x113FDB5CU);
}

TEST(Crc32c, goes_on_where_it_stopped) {
  EXPECT_EQ(crc32c(bytes_of("456789"), crc32c(bytes_of("123"))), crc32c(bytes_of("123456789")));
}

}  // namespace
}  // namespace rehale::exchange
