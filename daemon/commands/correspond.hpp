// `tidewright ask …` and `tidewright tell …`: what a person types goes to the running daemon over
// MQTT, and its answer is printed in plain words. A reset is asked for and confirmed in one go.
// Called by main with what CLI11 has parsed.
#pragma once

#include <chrono>
#include <cstdint>
#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

#include "config/household.hpp"
#include "daemon/hub/plain.hpp"
#include "daemon/hub/request.hpp"

namespace tidewright::commands {

// As typed: `tidewright ask shelve vat_low --minutes 60 --who ann`.
struct Typed {
  hub::Verb verb{};
  std::vector<std::string> words;  // {"shelve", "vat_low"}
  std::string who;                 // empty = the login name
  std::optional<double> minutes;
  std::optional<std::uint32_t> occurrence;
  bool json = false;  // print the daemon's answer as it came
};

// Where the daemon is to be found: its broker and its place there.
struct Reach {
  config::Broker broker;
  hub::Place place{"tidewright", "waterroom"};
  std::chrono::milliseconds patience{10'000};  // for the broker, and for each answer
};

// Exit code: 0 done; sysexits else: 64 typed wrongly, 69 no broker, 75 no answer (is the daemon
// running?), 77 refused by the daemon. The answer goes to `out`, what went wrong to `err`.
int correspond(const Typed& typed, const Reach& reach, std::ostream& out, std::ostream& err);

}  // namespace tidewright::commands
