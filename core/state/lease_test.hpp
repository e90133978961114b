// Whether each actuator really goes off when the daemon falls silent, and the test under way.
// Written by procedure/lease_test only.
#pragma once

#include <array>
#include <cstdint>

#include "core/base/instant.hpp"
#include "core/base/reason.hpp"
#include "core/room/room.hpp"
#include "core/state/proof.hpp"

namespace tidewright::state {

enum class LeasePhase : std::uint8_t {
  none,
  waiting,  // for it to come on
  renewed,  // it must stay on for three times the lease
  silent,   // no ON is sent: it must go off by itself
  cut,      // it has not: is it OFF when told so?
  over,     // OFF for one pass, with all that goes with it
};

// One at a time in a room.
struct LeaseTest {
  LeasePhase phase = LeasePhase::none;
  room::ActuatorIndex actuator = no_subject;
  bool by_person = false;    // else in a fill, which wants the water anyway
  Instant since = long_ago;  // waiting, renewed, silent: began so
  Reason why;                // what its actuator is told
};

struct LeaseTests {
  std::array<Proof, room::actuators_max> results{};
  LeaseTest under_way;
};

}  // namespace tidewright::state
