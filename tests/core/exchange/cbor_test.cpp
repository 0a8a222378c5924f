// CBOR against the table of RFC 8949 appendix A (as in the RFC's own machine-readable test
// vectors).
#include "core/exchange/cbor.h"

#include <gtest/gtest.h>

#include <cmath>
#include <memory>

#include "core/base/rng.h"

namespace rehale::exchange {
namespace {

Bytes from_hex(std::string_view hex) {
  Bytes bytes;
  const auto digit = [](char c) { return c <= '9' ? c - '0' : c - 'a' + 10; };
  for (std::size_t n = 0; n + 1 < hex.size(); n += 2) {
    bytes.push_back(static_cast<std::uint8_t>(digit(hex[n]) * 16 + digit(hex[n + 1])));
  }
  return bytes;
}

Result<Json> read_exact(const Bytes& bytes, CborBounds bounds = {}) {
  const auto copy = std::make_unique<std::uint8_t[]>(bytes.size());
  std::copy(bytes.begin(), bytes.end(), copy.get());
  return read_cbor({copy.get(), bytes.size()}, bounds);
}

Bytes binary(const char* hex) { return read_exact(from_hex(hex))->get_binary(); }

struct Row {
  const char* hex;
  const char* json;
  bool same_back = true;  // encoding gives the very bytes again
};

const Row k_table[] = {
    {"00", "0"},
    {"01", "1"},
    {"0a", "10"},
    {"17", "23"},
    {"1818", "24"},
    {"1819", "25"},
    {"1864", "100"},
    {"1903e8", "1000"},
    {"1a000f4240", "1000000"},
    {"1b000000e8d4a51000", "1000000000000"},
    {"1bffffffffffffffff", "18446744073709551615"},
    {"20", "-1"},
    {"29", "-10"},
    {"3863", "-100"},
    {"3903e7", "-1000"},
    // nlohmann writes floats of 4 and 8 bytes, no halves
    {"f90000", "0.0", false},
    {"f98000", "-0.0", false},
    {"f93c00", "1.0", false},
    {"fb3ff199999999999a", "1.1"},
    {"f93e00", "1.5", false},
    {"f97bff", "65504.0", false},
    {"fa47c35000", "100000.0"},
    {"fa7f7fffff", "3.4028234663852886e+38"},
    {"fb7e37e43c8800759c", "1.0e+300"},
    {"f90001", "5.960464477539063e-08", false},
    {"f90400", "6.103515625e-05", false},
    {"f9c400", "-4.0", false},
    {"fbc010666666666666", "-4.1"},
    {"f4", "false"},
    {"f5", "true"},
    {"f6", "null"},
    {"60", "\"\""},
    {"6161", "\"a\""},
    {"6449455446", "\"IETF\""},
    {"62225c", "\"\\\"\\\\\""},
    {"62c3bc", "\"\xc3\xbc\""},
    {"63e6b0b4", "\"\xe6\xb0\xb4\""},
    {"64f0908591", "\"\xf0\x90\x85\x91\""},
    {"80", "[]"},
    {"83010203", "[1,2,3]"},
    {"8301820203820405", "[1,[2,3],[4,5]]"},
    {"98190102030405060708090a0b0c0d0e0f101112131415161718181819",
     "[1,2,3,4,5,6,7,8,9,10,11,12,13,14,15,16,17,18,19,20,21,22,23,24,25]"},
    {"a0", "{}"},
    {"a26161016162820203", "{\"a\":1,\"b\":[2,3]}"},
    {"826161a161626163", "[\"a\",{\"b\":\"c\"}]"},
    {"a56161614161626142616361436164614461656145",
     "{\"a\":\"A\",\"b\":\"B\",\"c\":\"C\",\"d\":\"D\",\"e\":\"E\"}"},
    {"7f657374726561646d696e67ff", "\"streaming\"", false},
    {"9fff", "[]", false},
    {"9f018202039f0405ffff", "[1,[2,3],[4,5]]", false},
    {"9f01820203820405ff", "[1,[2,3],[4,5]]", false},
    {"83018202039f0405ff", "[1,[2,3],[4,5]]", false},
    {"83019f0203ff820405", "[1,[2,3],[4,5]]", false},
    {"9f0102030405060708090a0b0c0d0e0f101112131415161718181819ff",
     "[1,2,3,4,5,6,7,8,9,10,11,12,13,14,15,16,17,18,19,20,21,22,23,24,25]", false},
    {"bf61610161629f0203ffff", "{\"a\":1,\"b\":[2,3]}", false},
    {"826161bf61626163ff", "[\"a\",{\"b\":\"c\"}]", false},
    {"bf6346756ef563416d7421ff", "{\"Fun\":true,\"Amt\":-2}", false},
};

TEST(Cbor, reads_and_writes_the_values_of_rfc_8949_appendix_a) {
  for (const Row& row : k_table) {
    const auto read = read_exact(from_hex(row.hex));
    ASSERT_TRUE(read) << row.hex << " " << read.error().detail;
    const Json wanted = Json::parse(row.json);
    EXPECT_EQ(*read, wanted) << row.hex;
    EXPECT_EQ(read->is_number_float(), wanted.is_number_float()) << row.hex;
    if (row.same_back) {
      EXPECT_EQ(write_cbor(wanted), from_hex(row.hex)) << row.json;
    }
  }
}

TEST(Cbor, reads_infinities_and_byte_strings_of_appendix_a) {
  EXPECT_EQ(read_exact(from_hex("f97c00"))->get<double>(), HUGE_VAL);
  EXPECT_EQ(read_exact(from_hex("fa7f800000"))->get<double>(), HUGE_VAL);
  EXPECT_EQ(read_exact(from_hex("fbfff0000000000000"))->get<double>(), -HUGE_VAL);
  EXPECT_TRUE(std::isnan(read_exact(from_hex("f97e00"))->get<double>()));
  EXPECT_EQ(binary("4401020304"), (Bytes{1, 2, 3, 4}));
  EXPECT_EQ(binary("40"), Bytes{});
  EXPECT_EQ(binary("5f42010243030405ff"), (Bytes{1, 2, 3, 4, 5}));
}

// The rest of appendix A: what no code of ours holds is refused, not guessed.
TEST(Cbor, tags_other_simple_values_and_keys_that_are_no_text_are_refused) {
  for (const char* hex :
       {"c249010000000000000000", "c349010000000000000000", "3bffffffffffffffff", "f7", "f0",
        "f818", "f8ff", "c074323031332d30332d32315432303a30343a30305a", "c11a514b67b0",
        "c1fb41d452d9ec200000", "d74401020304", "d818456449455446", "a201020304"}) {
    const auto read = read_exact(from_hex(hex));
    ASSERT_FALSE(read) << hex;
    EXPECT_EQ(read.error().code, "code-shape") << hex;
  }
}

// RFC 8949 appendix F: examples of bytes that are no CBOR.
TEST(Cbor, what_is_not_well_formed_is_refused) {
  for (const char* hex : {"18",
                          "19",
                          "1a",
                          "1b",
                          "1901",
                          "1a0102",
                          "1b01020304050607",
                          "38",
                          "58",
                          "78",
                          "98",
                          "9a01ff00",
                          "b8",
                          "d8",
                          "f8",
                          "f900",
                          "fa0000",
                          "fb000000",
                          "41",
                          "61",
                          "5affffffff00",
                          "5bffffffffffffffff010203",
                          "7affffffff00",
                          "7b7fffffffffffffff010203",
                          "81",
                          "818181818181",
                          "8200",
                          "a1",
                          "a20102",
                          "a100",
                          "a2000000",
                          "5f4100",
                          "7f6100",
                          "9f",
                          "9f0102",
                          "bf",
                          "bf01020102",
                          "819f",
                          "9f8000",
                          "9f9f9f9f9fffffffff",
                          "9f819f819f9fffffff",
                          "1c",
                          "1d",
                          "1e",
                          "3c",
                          "5c",
                          "7c",
                          "9c",
                          "bc",
                          "fc",
                          "fd",
                          "f800",
                          "f801",
                          "f818",
                          "5f00ff",
                          "5f21ff",
                          "5f6100ff",
                          "5f80ff",
                          "5fa0ff",
                          "5fe0ff",
                          "7f4100ff",
                          "5f5f4100ffff",
                          "7f7f6100ffff",
                          "ff",
                          "81ff",
                          "8200ff",
                          "a1ff",
                          "a1ff00",
                          "a100ff",
                          "a20000ff",
                          "9f81ff",
                          "bf00ff",
                          "bf000000ff",
                          "1f",
                          "3f",
                          "df",
                          ""}) {
    EXPECT_FALSE(read_exact(from_hex(hex))) << hex;
  }
}

TEST(Cbor, size_depth_and_number_of_items_are_bounded_before_parsing) {
  EXPECT_EQ(read_exact(Bytes(5000, 0)).error().code, "code-too-long");
  EXPECT_EQ(read_exact(Bytes(4000, 0x81)).error().code, "code-too-long");  // a list in a list in…
  EXPECT_EQ(read_exact(Bytes(4000, 0x9f)).error().code, "code-too-long");
  // a list that promises 2^32 - 1 entries, and one of 2^64 - 1
  EXPECT_EQ(read_exact(from_hex("9affffffff00")).error().code, "code-truncated");
  EXPECT_EQ(read_exact(from_hex("bbffffffffffffffff00")).error().code, "code-truncated");
  Bytes many(3003, 0);
  many[0] = 0x99, many[1] = 0x0b, many[2] = 0xb8;
  EXPECT_EQ(read_exact(many).error().code, "code-too-long");
  EXPECT_TRUE(read_exact(many, {.items = 4000}));
  EXPECT_EQ(read_exact(from_hex("0000")).error().code, "code-shape");  // something behind the end
}

TEST(Cbor, random_bytes_never_do_more_than_err) {
  Rng rng(11);
  for (int round = 0; round < 20000; ++round) {
    Bytes bytes(static_cast<std::size_t>(rng.below(40)));
    for (auto& byte : bytes) byte = static_cast<std::uint8_t>(rng.next());
    const auto read = read_exact(bytes);
    if (!read) {
      EXPECT_FALSE(read.error().detail.empty());
    }
  }
}

}  // namespace
}  // namespace rehale::exchange
