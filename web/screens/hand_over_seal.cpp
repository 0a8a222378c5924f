// Hand over a result that somebody asked for with a key: sealed in this browser before it goes
// anywhere. The unsealed code is never shown, copied, saved or put into a QR code.
#include <algorithm>

#include "core/exchange/sealed_code.h"
#include "web/screens/screens.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

using exchange::Bytes;

// "encapsulated key", line break, "sealed": what the page answers.
Result<std::string> sealed_code(const std::string& answer, exchange::SealedResult result) {
  const std::size_t line = answer.find('\n');
  const auto sender = exchange::from_base64url(std::string_view(answer).substr(0, line));
  if (!sender || sender->size() != result.sender.size() || line == std::string::npos)
    return fail("seal", "key", "the page gave no sealed result");
  auto sealed = exchange::from_base64url(std::string_view(answer).substr(line + 1));
  if (!sealed) return tl::unexpected(sealed.error());
  std::ranges::copy(*sender, result.sender.begin());
  result.sealed = *std::move(sealed);
  return exchange::write_sealed(result);
}

}  // namespace

bool App::seals() const { return assigned && assigned->key && !handed; }

void App::seal_result(const std::string& code) {
  if (hand_over.plain == code && !hand_over.code.empty()) return;  // the same seal for the same run
  hand_over.plain = code;
  hand_over.code.clear();
  hand_over.link.clear();
  hand_over.lines.clear();
  hand_over.no_seal = false;
  const auto bytes = exchange::bytes_to_seal(code);
  if (!bytes) return show_error(bytes.error());
  exchange::SealedResult result{.assignment = assigned->id, .content = session.content()};
  const std::string words =
      exchange::to_base64url(*assigned->key) + '\n' +
      exchange::to_base64url(exchange::bound_bytes(result.assignment, result.content)) + '\n' +
      exchange::to_base64url(*bytes);
  shell::ask_page("seal", words, [this, code, result](const Result<std::string>& answer) {
    if (hand_over.plain != code) return;  // another result by now
    const auto sealed = answer ? sealed_code(*answer, result) : tl::unexpected(answer.error());
    hand_over.no_seal = !sealed;
    if (sealed) show_hand_over_code(*sealed, "#s=");
    else ui->say(say("asked/no-seal"));
    shell::redraw();
  });
}

std::string saved_words(const App& app) {
  if (!app.seals()) return "rehale-result.json\n" + app.export_run();
  return "rehale-sealed.json\n{\"schema\":1,\"kind\":\"rehale-sealed\",\"code\":\"" +
         app.hand_over.code + "\"}";
}

}  // namespace rehale::screens
