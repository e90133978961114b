// One switched thing that moves or stops water. OFF is its rest state; every ON is a lease.
#pragma once

#include <optional>
#include <string>

#include "core/base/instant.hpp"
#include "core/base/units.hpp"
#include "core/room/role.hpp"

namespace tidewright::room {

// Who switches it off when the daemon falls silent.
enum class LeaseKind : std::uint8_t {
  device,      // the device itself counts down a time to live sent with each ON
  plug,        // the plug's auto-off, begun anew by each ON
  plug_fixed,  // the plug's auto-off, not begun anew by ON: a run is a series of runs
  hub,         // an automation of the hub, named in the file
  none,        // nobody: attended runs only
};

struct Actuator {
  std::string id;
  Role role{};
  std::string words;  // "the booster pump"

  LeaseKind lease_kind{};
  Duration lease{120'000};  // from the last ON to silence's OFF
  Duration travel{0};       // from command to effect (a slow valve)
  Duration run_longest{72 * 3'600'000};
  Duration on_per_day_longest{24 * 3'600'000};
  Duration off_shortest{2 * 60'000};
  int starts_per_hour_max = 6;
  Watts idle_below{5};                // under this it is not working
  std::optional<LitresPerHour> flow;  // through it at most, where the file says it
};

}  // namespace tidewright::room
