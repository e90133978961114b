// Whether each actuator really goes off when the daemon falls silent, and the test under way.
// Written by procedure/lease_test only.
#pragma once

#include <array>
#include <cstdint>

#include "core/base/instant.hpp"
#include "core/room/room.hpp"

namespace tidewright::state {

enum class LeaseProof : std::uint8_t { never_done, kept, not_kept };

enum class LeasePhase : std::uint8_t {
  none,
  renewed,  // it must stay on for three times the lease
  silent,   // no ON is sent: it must go off by itself
  cut,      // it has not: is it OFF when told so?
};

struct LeaseTest {
  LeaseProof proof = LeaseProof::never_done;
  Instant proved = long_ago;
  LeasePhase phase = LeasePhase::none;
  bool by_person = false;  // who is there; else in a fill, at a quiet moment
  bool ran = false;        // it has been on in this test
  Instant began = long_ago;
};

// A person's test has no other want; one in a fill goes with the fill.
constexpr bool wants_on(const LeaseTest& test) {
  return test.by_person && (test.phase == LeasePhase::renewed || test.phase == LeasePhase::silent);
}

using LeaseTests = std::array<LeaseTest, room::actuators_max>;

}  // namespace tidewright::state
