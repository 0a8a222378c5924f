#include "core/exchange/cbor.h"

#include <utility>

namespace rehale::exchange {

namespace {

// A head: major type (RFC 8949 section 3) and its argument.
struct Head {
  unsigned major = 0, info = 0;
  std::uint64_t argument = 0;
  [[nodiscard]] bool open_ended() const { return info == 31 && major >= 2 && major <= 5; }
  [[nodiscard]] bool is_break() const { return major == 7 && info == 31; }
};

// Walks over heads without building anything, with a stack of its own.
class Walk {
 public:
  Walk(std::span<const std::uint8_t> bytes, CborBounds bounds) : bytes_(bytes), bounds_(bounds) {}

  Result<void> all() {
    open_.push_back({.left = 1});
    while (!open_.empty()) {
      if (open_.back().left == 0 && !open_.back().to_break) {
        open_.pop_back();
        continue;
      }
      auto stepped = step();
      if (!stepped) return stepped;
    }
    if (at_ != bytes_.size()) return trouble("code-shape", "something follows after the end");
    return {};
  }

 private:
  struct Open {
    std::uint64_t left = 0;
    bool to_break = false;
    bool pieces_only = false;  // of an open-ended text or byte string
    unsigned major = 0;
    bool odd = false;  // open-ended map: a key waits for its value
  };

  [[nodiscard]] tl::unexpected<Error> trouble(const char* code, const char* remedy) const {
    return fail(code, "byte " + std::to_string(at_), remedy);
  }

  Result<Head> head() {
    const auto cut = [this] { return trouble("code-truncated", "the code breaks off here"); };
    if (at_ >= bytes_.size()) return cut();
    const unsigned first = bytes_[at_++];
    Head head{.major = first >> 5U, .info = first & 31U};
    head.argument = head.info;
    if (head.info < 24 || head.info == 31) return head;
    if (head.info > 27) return trouble("code-shape", "this is no CBOR (RFC 8949)");
    const std::size_t width = std::size_t{1} << (head.info - 24);
    if (bytes_.size() - at_ < width) return cut();
    head.argument = 0;
    for (std::size_t n = 0; n < width; ++n) head.argument = (head.argument << 8U) | bytes_[at_++];
    return head;
  }

  Result<void> step() {
    const auto head = this->head();
    if (!head) return tl::unexpected(head.error());
    if (head->is_break()) return close();
    if (++items_ > bounds_.items)
      return trouble("code-too-long", "more than any code of ours holds");
    Open& top = open_.back();
    if (top.pieces_only && (head->major != top.major || head->open_ended())) {
      return trouble("code-shape", "this is no CBOR (RFC 8949)");
    }
    if (top.to_break) top.odd = !top.odd;
    else --top.left;
    return enter(*head);
  }

  Result<void> close() {
    const Open& top = open_.back();
    if (!top.to_break || (top.major == 5 && top.odd)) {
      return trouble("code-shape", "this is no CBOR (RFC 8949)");
    }
    open_.pop_back();
    return {};
  }

  Result<void> enter(const Head& head) {
    switch (head.major) {
      case 0:
      case 1:
        if (head.info == 31) return trouble("code-shape", "this is no CBOR (RFC 8949)");
        // nlohmann holds numbers from -2^63 to 2^64-1
        if (head.major == 1 && head.argument > static_cast<std::uint64_t>(INT64_MAX)) {
          return trouble("code-shape", "a number below -2^63");
        }
        return {};
      case 2:
      case 3:
        return head.open_ended()
                   ? push({.to_break = true, .pieces_only = true, .major = head.major})
                   : skip(head.argument);
      case 4:
      case 5:
        if (head.open_ended()) return push({.to_break = true, .major = head.major});
        // every entry takes a byte at least, so that no length can promise more than there is
        if (head.argument > bytes_.size() - at_) {
          return trouble("code-truncated",
                         "the code breaks off: a list is longer than what is left");
        }
        return push({.left = head.argument * (head.major == 5 ? 2 : 1), .major = head.major});
      case 7:
        if ((head.info >= 20 && head.info <= 22) || (head.info >= 25 && head.info <= 27)) return {};
        return trouble("code-shape", "a simple value that no code of ours holds");
      default:
        return trouble("code-shape", "a tag, which no code of ours holds");
    }
  }

  Result<void> push(Open open) {
    if (static_cast<int>(open_.size()) > bounds_.depth) {
      return trouble("code-too-long", "deeper than any code of ours is");
    }
    open_.push_back(open);
    return {};
  }

  Result<void> skip(std::uint64_t length) {
    if (length > bytes_.size() - at_) return trouble("code-truncated", "the code breaks off here");
    at_ += static_cast<std::size_t>(length);
    return {};
  }

  std::span<const std::uint8_t> bytes_;
  CborBounds bounds_;
  std::size_t at_ = 0, items_ = 0;
  std::vector<Open> open_;
};

}  // namespace

Bytes write_cbor(const Json& value) { return Json::to_cbor(value); }

Result<Json> read_cbor(std::span<const std::uint8_t> bytes, CborBounds bounds) {
  if (bytes.size() > bounds.bytes) {
    return fail("code-too-long", "byte " + std::to_string(bounds.bytes),
                "this is longer than any code of the self-check");
  }
  const auto walked = Walk(bytes, bounds).all();
  if (!walked) return tl::unexpected(walked.error());
  Json json = Json::from_cbor(bytes.begin(), bytes.end(), true, false);
  if (json.is_discarded()) return fail("code-shape", "byte 0", "this is no CBOR (RFC 8949)");
  return json;
}

}  // namespace rehale::exchange
