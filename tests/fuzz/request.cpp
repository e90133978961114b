// Any text as an ask or a tell: no crash, and either a request that core can take or a refusal in
// words. The first byte chooses which of the two it is.
#include "daemon/hub/request.hpp"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "tests/support/rooms.hpp"

namespace {

using namespace tidewright;

void check(bool promised) {
  if (!promised) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const config::Household household = [] {
    config::Household made;
    made.room = support::minimal_room();
    return made;
  }();
  if (size == 0) return 0;
  const auto verb = data[0] % 2 == 0 ? hub::Verb::ask : hub::Verb::tell;
  const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);
  const hub::Request request = hub::read_request(verb, text, household);
  check(request.about.what.size() <= 32 && request.about.id.size() <= 64);
  if (const auto* ask = std::get_if<Ask>(&request.content)) {
    check(verb == hub::Verb::ask && !ask->who.empty());
    check(ask->lasting >= Duration{0} && ask->token <= 999'999);
  } else if (const auto* tell = std::get_if<Tell>(&request.content)) {
    check(verb == hub::Verb::tell && !tell->who.empty() && std::isfinite(tell->value));
    const bool known = tell->instrument < household.room.instruments.size();
    check(known || tell->instrument == no_subject);
  } else {
    check(!std::get<std::string>(request.content).empty());
  }
  return 0;
}
