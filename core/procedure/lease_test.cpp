#include "core/procedure/lease_test.hpp"

#include <algorithm>

#include "core/picture/proof_due.hpp"
#include "core/procedure/held_by_latch.hpp"

namespace tidewright::procedure {
namespace {

using namespace std::chrono_literals;
using picture::Picture;
using room::ActuatorIndex;
using state::LeasePhase;
using state::LeaseProof;
using state::LeaseTest;

// So long a test waits for its actuator to come on: it may rest, or be held.
constexpr Duration begins_within = 10min;
constexpr int times_renewed_for = 3;
// A slow mesh is no broken timer; the level goes on being watched meanwhile. [choice]
constexpr Duration grace = 60s;

const room::Actuator& actuator_of(const Picture& picture, ActuatorIndex i) {
  return picture.room.actuators[i];
}

bool has_feedback(const Picture& picture, ActuatorIndex i) {
  return room::find(picture.room, room::Quantity::feedback, i).has_value();
}

// Its plug counts down from the first ON on: nothing to renew.
bool is_fixed(const Picture& picture, ActuatorIndex i) {
  return actuator_of(picture, i).lease_kind == room::LeaseKind::plug_fixed;
}

std::optional<Reason> refusal(const Picture& picture, ActuatorIndex i) {
  const room::Actuator& actuator = actuator_of(picture, i);
  if (actuator.lease_kind == room::LeaseKind::none) return Reason{Why::lease_unsupervised, i, {}};
  if (!has_feedback(picture, i)) return Reason{Why::no_feedback, i, {}};
  if (const auto latch = held_by_latch(picture.latches, actuator.role)) return latch;
  if (picture.drives[i].on || picture.ledger.working[i].on) return Reason{Why::runs_already, i, {}};
  return std::nullopt;
}

void take(const Picture& picture, const Ask& ask, state::LeaseTests& tests, Effects& effects) {
  if (ask.kind != AskKind::test_lease) return;
  const ActuatorIndex i = ask.actuator;
  if (const auto refused = refusal(picture, i)) {
    effects.push(Answer{ask.ticket, false, *refused});
    return;
  }
  LeaseTest& test = tests[i];
  test.phase = is_fixed(picture, i) ? LeasePhase::silent : LeasePhase::renewed;
  test.by_person = true;
  test.ran = false;
  test.began = picture.now;
  const Duration longest =
      (times_renewed_for + 1) * actuator_of(picture, i).lease + room::feedback_due(picture.room, i);
  const auto minutes = static_cast<float>(seconds(longest) / 60);
  effects.push(Answer{ask.ticket, true, {Why::lease_test_began, i, {minutes}}});
}

void end(LeaseTest& test) {
  test.phase = LeasePhase::none;
  test.by_person = test.ran = false;
}

void conclude(LeaseTest& test, LeaseProof proof, Instant now, Effects& effects) {
  test.proof = proof;
  test.proved = now;
  end(test);
  effects.push(Persist{});
}

// Told OFF, its feedback follows: then it is the timer that failed. If it does not, the feedback is
// not to be believed, and that is the matter of actuator_disobeys.
void judge_cut(const Picture& picture, ActuatorIndex i, LeaseTest& test, Effects& effects,
               Wake& wake) {
  if (picture::confirmed(picture, i) == false) {
    return conclude(test, LeaseProof::not_kept, picture.now, effects);
  }
  const Instant due = picture.drives[i].commanded + room::feedback_due(picture.room, i);
  if (picture.now >= due) return end(test);
  wake.by(due);
}

// Off at last, or off too early: who did it is told by what we had commanded.
void go_on_while_off(const Picture& picture, ActuatorIndex i, LeaseTest& test, Effects& effects,
                     Wake& wake) {
  if (test.phase == LeasePhase::cut) return judge_cut(picture, i, test, effects, wake);
  if (!test.ran) {
    if (picture.now >= test.began + begins_within) return end(test);
    return wake.by(test.began + begins_within);
  }
  const Why why = picture.drives[i].why.why;
  if (why == Why::lease_proved) return conclude(test, LeaseProof::kept, picture.now, effects);
  // It went off although it was renewed: its own timer, not begun anew by ON.
  const bool renewed_in_vain = test.phase == LeasePhase::renewed && why == Why::switched_by_hand;
  if (renewed_in_vain) return conclude(test, LeaseProof::not_kept, picture.now, effects);
  end(test);
}

void go_on_while_on(const Picture& picture, ActuatorIndex i, LeaseTest& test, Wake& wake) {
  const state::Drive& drive = picture.drives[i];
  if (!drive.obeyed) return;
  test.ran = true;
  const Duration lease = actuator_of(picture, i).lease;
  if (test.phase == LeasePhase::renewed) {
    const Instant proved = drive.commanded + times_renewed_for * lease;
    if (picture.now < proved) return wake.by(proved);
    test.phase = LeasePhase::silent;
  }
  const Instant last_on = is_fixed(picture, i) ? drive.commanded : drive.sent;
  const Instant due = last_on + lease + room::feedback_due(picture.room, i) + grace;
  if (picture.now < due) return wake.by(due);
  if (picture::confirmed(picture, i) != true) return end(test);  // nobody can tell
  test.phase = LeasePhase::cut;
}

// A gauge that is nearly at STOP; without one, any time of a fill is as good.
bool nearly_over(const Picture& picture) {
  const auto gauge = room::find(picture.room, room::Quantity::level, room::Place::vat);
  if (!gauge || !picture.room.vat || !picture.room.vat->stop_at) return true;
  const double near =
      std::max(3 * picture.room.instruments[*gauge].step, 0.02 * picture.room.vat->capacity.value);
  return picture.level && *picture.level >= *picture.room.vat->stop_at - Litres{near};
}

bool any_under_way(const state::LeaseTests& tests) {
  return std::any_of(tests.begin(), tests.end(),
                     [](const LeaseTest& test) { return test.phase != LeasePhase::none; });
}

// By itself only where renewing is what keeps it on, and the renewals of this run have shown so.
bool may_begin_by_itself(const Picture& picture, ActuatorIndex i) {
  const room::Actuator& actuator = actuator_of(picture, i);
  const state::Drive& drive = picture.drives[i];
  const bool due = picture.now >= picture::lease_test_due(picture, i);
  const bool renewed = actuator.lease_kind != room::LeaseKind::none && !is_fixed(picture, i);
  return due && renewed && facts(actuator.role).makes_water && has_feedback(picture, i) &&
         drive.on && drive.obeyed && picture.now - drive.commanded >= 10min &&
         picture.now - drive.commanded >= times_renewed_for * actuator.lease &&
         picture.make_water.wants_water && nearly_over(picture);
}

}  // namespace

void lease_test(const Picture& picture, const Event& event, state::LeaseTests& tests,
                Effects& effects, Wake& wake) {
  if (std::holds_alternative<Started>(event.what)) {
    for (LeaseTest& test : tests) end(test);
  }
  if (const auto* ask = std::get_if<Ask>(&event.what)) take(picture, *ask, tests, effects);
  for (std::size_t n = 0; n < picture.room.actuators.size(); ++n) {
    const auto i = static_cast<ActuatorIndex>(n);
    LeaseTest& test = tests[n];
    if (test.phase == LeasePhase::none) {
      if (any_under_way(tests) || !may_begin_by_itself(picture, i)) continue;
      test.phase = LeasePhase::silent;
      test.began = picture.now;
      test.ran = true;
    }
    if (picture.drives[n].on) {
      go_on_while_on(picture, i, test, wake);
    } else {
      go_on_while_off(picture, i, test, effects, wake);
    }
  }
}

}  // namespace tidewright::procedure
