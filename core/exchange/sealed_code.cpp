#include "core/exchange/sealed_code.h"

#include <algorithm>
#include <utility>

#include "core/exchange/content_name.h"
#include "core/exchange/envelope.h"
#include "core/exchange/fields.h"

namespace rehale::exchange {

namespace {

constexpr std::size_t k_tag_bytes = 16;  // of the ciphers of RFC 9180 section 7.3

}  // namespace

Bytes bound_bytes(const RandomId& assignment, std::string_view content) {
  constexpr std::string_view k_purpose = "rehale-sealed-1";
  // Joined as text: g++ 12 sees an overflow in vector's own insert where there is none.
  std::string bytes(k_purpose);
  bytes.append(assignment.begin(), assignment.end()).append(content);
  return {bytes.begin(), bytes.end()};
}

Result<Bytes> bytes_to_seal(std::string_view result_code) {
  if (result_code.size() < 3 || result_code.front() != static_cast<char>(Kind::result)) {
    return fail("code-shape", "result", "expected the code of a result");
  }
  const auto bytes = from_base64url(result_code.substr(2));
  if (!bytes) return tl::unexpected(bytes.error());
  Bytes all{static_cast<std::uint8_t>(result_code[0]), static_cast<std::uint8_t>(result_code[1])};
  all.insert(all.end(), bytes->begin(), bytes->end());
  return all;
}

std::string line_to_open(const SealedResult& sealed) {
  return to_base64url(sealed.sender) + ' ' +
         to_base64url(bound_bytes(sealed.assignment, sealed.content)) + ' ' +
         to_base64url(sealed.sealed);
}

Result<ReadResult> read_opened(const SealedResult& sealed, std::span<const std::uint8_t> opened) {
  if (opened.size() < 3) return fail("code-length", "opened", "nothing was sealed");
  std::string code{static_cast<char>(opened[0]), static_cast<char>(opened[1])};
  code += to_base64url(opened.subspan(2));
  auto result = read_result(code);
  if (!result) return result;
  if (result->begin.content != sealed.content ||
      (result->head.assignment && *result->head.assignment != sealed.assignment)) {
    return fail("sealed-other", "content", "the seal is bound to something else than it holds");
  }
  result->head.assignment = sealed.assignment;
  return result;
}

Result<std::string> write_sealed(const SealedResult& result) {
  if (result.content.empty() || result.content.size() > 32 || !is_name(result.content)) {
    return fail("code-shape", "content", "expected the name of the content");
  }
  if (result.sealed.size() <= k_tag_bytes || result.sealed.size() > k_max_sealed_bytes) {
    return fail("code-shape", "sealed", "expected a sealed result");
  }
  const Json list = Json::array({Json::binary({result.assignment.begin(), result.assignment.end()}),
                                 content_json(result.content),
                                 Json::binary({result.sender.begin(), result.sender.end()}),
                                 Json::binary(result.sealed)});
  return write_envelope(Kind::sealed, k_sealed_version, write_cbor(list));
}

Result<SealedResult> read_sealed(std::string_view code) {
  const auto envelope = read_envelope(code, Kind::sealed, k_sealed_version);
  if (!envelope) return tl::unexpected(envelope.error());
  const auto json = read_cbor(envelope->payload);
  if (!json) return tl::unexpected(json.error());
  SealedResult result;
  Fields fields(*json, 4);
  const Bytes assignment = fields.bytes("assignment", 16, 16);
  result.content = read_content_name(fields);
  const Bytes sender = fields.bytes("key", 65, 65);
  result.sealed = fields.bytes("sealed", k_tag_bytes + 1, k_max_sealed_bytes);
  const auto done = fields.done();
  if (!done) return tl::unexpected(done.error());
  std::ranges::copy(assignment, result.assignment.begin());
  std::ranges::copy(sender, result.sender.begin());
  return result;
}

}  // namespace rehale::exchange
