// What must hold after every event of a night, whatever befalls. Judged from outside: from the
// truth of the pretend room, from what was delivered and sent, and from what is reported.
#pragma once

#include <optional>
#include <span>
#include <string>

#include "core/nights/journal.hpp"
#include "core/nights/night.hpp"
#include "core/nights/witness.hpp"
#include "core/report/report.hpp"

namespace tidewright::nights {

// The world outside the daemon at one moment.
struct Moment {
  const room::Room& room;
  const Night& night;
  Instant begin;  // of the night
  const rehearsal::PretendRoom& pretend;
  const Witness& witness;
};

// One step of the daemon, and the moment after it.
struct Scene : Moment {
  const Witness& before;  // as things were when the event came
  const State& state_before;
  const State& state;
  const Event& event;
  const Effects& effects;
  Instant wake;  // when it asks for the next pass

  // A person runs it for some minutes and is there.
  bool attended() const { return state.make_water.demand == state::Demand::attended; }
  // Or tests the lease of that one.
  bool tested_by_person(room::ActuatorIndex i) const {
    const state::LeaseTest& test = state.lease_tests.under_way;
    return test.phase != state::LeasePhase::none && test.by_person && test.actuator == i;
  }
  // For one or the other.
  bool somebody_is_there() const {
    const room::ActuatorIndex i = state.lease_tests.under_way.actuator;
    return attended() || (i < room.actuators.size() && tested_by_person(i) &&
                          room::facts(room.actuators[i].role).makes_water);
  }
};

// What is wrong, or nothing.
using Complaint = std::optional<std::string>;

struct Invariant {
  int number;  // in docs/reliability.md
  std::string_view name;
  std::string_view sentence;
  // Each null where the invariant is not about that.
  Complaint (*after_step)(const Scene&) = nullptr;
  Complaint (*at_any_time)(const Moment&) = nullptr;  // also while the daemon is dead
  Complaint (*of_report)(const Moment&, const report::Report&) = nullptr;
  Complaint (*after_night)(const room::Room&, const Journal&) = nullptr;
};

std::span<const Invariant* const> invariants();

struct Violation {
  int number = 0;
  std::string name;
  Duration at{0};  // after the night's begin
  std::string text;
};

}  // namespace tidewright::nights
