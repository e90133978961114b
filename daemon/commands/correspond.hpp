// `tidewright ask …` and `tidewright tell …`: what a person types goes to the running daemon over
// MQTT, and its answer is printed in plain words. A reset is asked for and confirmed in one go.
// Called by main with what CLI11 has parsed.
#pragma once

#include <chrono>
#include <iosfwd>

#include "config/household.hpp"
#include "daemon/commands/typed.hpp"
#include "daemon/hub/plain.hpp"

namespace tidewright::commands {

// Where the daemon is to be found: its broker and its place there.
struct Reach {
  config::Broker broker;
  hub::Place place{"tidewright", "waterroom"};
  std::chrono::milliseconds patience{10'000};  // for the broker, and for each answer
};

// Exit code: 0 done; sysexits else: 64 typed wrongly, 69 no broker, 75 no answer (is the daemon
// running?), 77 refused by the daemon. The answer goes to `out`, what went wrong to `err`.
// Who asks is the login name, where `typed.who` is empty.
int correspond(const Typed& typed, const Reach& reach, std::ostream& out, std::ostream& err);

}  // namespace tidewright::commands
