// Any text as the state of the run before: read or refused whole, and what is read is a state that
// the daemon can start from and describe. The first byte chooses the room.
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>

#include "core/report/report.hpp"
#include "core/step.hpp"
#include "daemon/store/state_text.hpp"
#include "tests/support/rooms.hpp"

namespace {

using namespace tidewright;

void must(bool holds, const char* what) {
  if (holds) return;
  std::fprintf(stderr, "broken: %s\n", what);
  std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  static const room::Room rooms[] = {support::minimal_room(), support::full_room()};
  const room::Room& room = rooms[data[0] % 2];
  const std::string_view text{reinterpret_cast<const char*>(data) + 1, size - 1};
  State state;
  if (!store::from_text(room, text, state)) return 0;
  const std::string printed = store::to_text(room, state);
  State again;
  must(store::from_text(room, printed, again), "what was printed can be read");
  must(store::to_text(room, again) == printed, "and says the same");
  bool latched = false;
  for (const state::Latch& latch : state.latches.items) latched = latched || latch.set;
  Effects effects;
  Instant now = state.circumstances.now;
  for (const decltype(Event::what)& what :
       {decltype(Event::what){Started{}}, {Link{true}}, {Tick{}}}) {
    now += std::chrono::seconds{400};
    step(room, state, {now, what}, effects);
    for (const Effect& effect : effects) {
      const auto* command = std::get_if<Command>(&effect);
      must(!latched || command == nullptr || !command->on, "a latch that was read holds");
    }
    must(!report::describe(room, state).things.empty(), "it can be described");
  }
  return 0;
}
