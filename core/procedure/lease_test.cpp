#include "core/procedure/lease_test.hpp"

#include <algorithm>

#include "core/picture/proof_due.hpp"

namespace tidewright::procedure {
namespace {

using namespace std::chrono_literals;
using picture::Picture;
using room::ActuatorIndex;
using state::LeasePhase;
using state::LeaseTest;

// So long a person's test waits for its actuator to come on: it may have to rest.
constexpr Duration begins_within = 10min;
// One that proved nothing is not begun again by itself on the same day. [choice]
constexpr Duration by_itself_apart = 24h;
constexpr int renewed_for = 3;  // times the lease
// A plug's clock is not ours. [choice]
constexpr double lease_shortest = 0.9, lease_longest = 1.25;

// One test in one pass.
struct Pass {
  const Picture& picture;
  LeaseTest& test;
  state::Proof& result;
  Effects& effects;
  Wake& wake;

  ActuatorIndex i() const { return test.actuator; }
  const state::Drive& drive() const { return picture.drives[i()]; }
  Duration lease() const { return picture.room.actuators[i()].lease; }
  Duration lease(double share) const {
    return Duration{static_cast<Duration::rep>(share * static_cast<double>(lease().count()))};
  }
  // Its plug counts down from the first ON on: there is nothing to renew.
  bool is_fixed() const {
    return picture.room.actuators[i()].lease_kind == room::LeaseKind::plug_fixed;
  }
  bool is_off() const { return picture::confirmed(picture, i()) == false; }
  Reason because(Why why) const { return {why, i(), {}}; }
};

void enter(Pass& pass, LeasePhase phase, Instant since) {
  pass.test.phase = phase;
  pass.test.since = since;
}

void stop(Pass& pass, const Reason& why) {
  pass.test.phase = LeasePhase::over;
  pass.test.why = why;
  pass.wake.by(pass.picture.now + Duration{1});
}

void conclude(Pass& pass, bool kept) {
  pass.result = {.at = pass.picture.now, .passed = kept};
  pass.effects.push(Persist{});
  stop(pass, pass.because(kept ? Why::lease_proved : Why::lease_not_kept));
}

void wait_for_on(Pass& pass) {
  const state::Drive& drive = pass.drive();
  if (drive.on && drive.obeyed) {
    return enter(pass, pass.is_fixed() ? LeasePhase::silent : LeasePhase::renewed, drive.commanded);
  }
  const Instant longest = pass.test.since + begins_within;
  if (drive.held || pass.picture.now >= longest) return stop(pass, drive.why);
  pass.wake.by(longest);
}

void renew(Pass& pass) {
  if (pass.is_off()) return conclude(pass, false);
  const Instant proved = pass.test.since + renewed_for * pass.lease();
  if (pass.picture.now < proved) return pass.wake.by(proved);
  enter(pass, LeasePhase::silent, pass.drive().sent);
}

void be_silent(Pass& pass) {
  const Instant now = pass.picture.now;
  if (pass.is_off()) {
    // Too early, it was somebody's hand.
    const bool by_itself = now >= pass.test.since + pass.lease(lease_shortest);
    return by_itself ? conclude(pass, true) : stop(pass, pass.because(Why::switched_by_hand));
  }
  const Instant due =
      pass.test.since + pass.lease(lease_longest) + room::feedback_due(pass.picture.room, pass.i());
  if (now < due) return pass.wake.by(due);
  // Without a word of it nobody can tell.
  const bool told = picture::confirmed(pass.picture, pass.i()).has_value();
  if (!told) return stop(pass, pass.because(Why::no_feedback));
  enter(pass, LeasePhase::cut, now);
  pass.test.why = pass.because(Why::lease_not_kept);
}

// Told OFF, its feedback follows: then it is the timer that failed. If it does not, the feedback is
// not to be believed, and that is the matter of actuator_disobeys.
void judge_cut(Pass& pass) {
  if (pass.is_off()) return conclude(pass, false);
  const Instant due = pass.test.since + room::feedback_due(pass.picture.room, pass.i());
  if (pass.picture.now >= due) return stop(pass, pass.because(Why::lease_not_kept));
  pass.wake.by(due);
}

// After a failure no fill could begin anyway, before a test is passed.
bool is_in_the_way(const Pass& pass) {
  const bool makes_water = facts(pass.picture.room.actuators[pass.i()].role).makes_water;
  return pass.test.by_person && makes_water && pass.picture.make_water.wants_water &&
         !state::has_failed(pass.result);
}

void go_on(Pass& pass) {
  const LeasePhase phase = pass.test.phase;
  const bool runs = phase == LeasePhase::renewed || phase == LeasePhase::silent;
  // The interlock has ended it, or a fill is to begin.
  if (runs && !pass.drive().on) return stop(pass, pass.drive().why);
  if (phase < LeasePhase::cut && is_in_the_way(pass)) {
    return stop(pass, pass.picture.make_water.why);
  }
  switch (phase) {
    case LeasePhase::none:
      return;
    case LeasePhase::waiting:
      return wait_for_on(pass);
    case LeasePhase::renewed:
      return renew(pass);
    case LeasePhase::silent:
      return be_silent(pass);
    case LeasePhase::cut:
      return judge_cut(pass);
    case LeasePhase::over:
      pass.test.phase = LeasePhase::none;
  }
}

std::optional<Reason> refusal(const Picture& picture, ActuatorIndex i, const LeaseTest& test) {
  if (i >= picture.room.actuators.size()) return Reason{Why::no_such_thing, no_subject, {}};
  if (test.phase != LeasePhase::none) return test.why;
  if (picture.room.actuators[i].lease_kind == room::LeaseKind::none) {
    return Reason{Why::lease_unsupervised, i, {}};
  }
  if (!picture::lease_can_be_tried(picture.room, i)) return Reason{Why::no_feedback, i, {}};
  // A person's test is attended: what only lacks that does not stand against it.
  const state::Drive& drive = picture.drives[i];
  const bool waits_for_person =
      !drive.on && (drive.why.why == Why::no_leak_sensor || drive.why.why == Why::lease_not_kept);
  if (waits_for_person) return std::nullopt;
  if (drive.on || drive.wanted || picture.ledger.working[i].on) {
    return Reason{Why::not_at_rest, i, {}};
  }
  if (!drive.may_start) return drive.why;
  return std::nullopt;
}

Reason tried(const Picture& picture, ActuatorIndex i) {
  const Duration longest = begins_within + (renewed_for + 2) * picture.room.actuators[i].lease;
  return {Why::lease_tried, i, {static_cast<float>(seconds(longest) / 60)}};
}

void take(const Picture& picture, const Ask& ask, LeaseTest& test, Effects& effects) {
  if (const auto refused = refusal(picture, ask.actuator, test)) {
    effects.push(Answer{ask.ticket, false, *refused});
    return;
  }
  test = {.phase = LeasePhase::waiting,
          .actuator = ask.actuator,
          .by_person = true,
          .since = picture.now,
          .why = tried(picture, ask.actuator)};
  effects.push(Answer{ask.ticket, true, test.why});
}

bool is_nearly_full(const Picture& picture) {
  const auto gauge = room::find(picture.room, room::Quantity::level, room::Place::vat);
  if (!gauge || !picture.level || !picture.room.vat->stop_at) return false;
  const double near =
      std::max(2 * picture.room.instruments[*gauge].step, 0.01 * picture.room.vat->capacity.value);
  return *picture.level >= *picture.room.vat->stop_at - Litres{near};
}

// The renewals of a run that has gone on for three times the lease have shown what they can.
void begin_by_itself(const Picture& picture, state::LeaseTests& tests) {
  LeaseTest& test = tests.under_way;
  if (!picture.make_water.wants_water || picture.make_water.demand == state::Demand::attended ||
      state::any(picture.bypasses, picture.now) || !is_nearly_full(picture) ||
      picture.now < test.since + by_itself_apart) {
    return;
  }
  for (std::size_t n = 0; n < picture.room.actuators.size(); ++n) {
    const auto i = static_cast<ActuatorIndex>(n);
    const state::Drive& drive = picture.drives[n];
    const bool proved =
        drive.on && drive.obeyed && picture::confirmed(picture, i) == true &&
        picture.now >= drive.commanded + renewed_for * picture.room.actuators[n].lease;
    if (!proved || !drive.may_start || !picture::lease_is_tried_by_itself(picture.room, i) ||
        picture.now < picture::lease_test_due(picture, i)) {
      continue;
    }
    test = {
        .phase = LeasePhase::silent, .actuator = i, .since = drive.sent, .why = tried(picture, i)};
    return;
  }
}

}  // namespace

void lease_test(const Picture& picture, const Event& event, state::LeaseTests& tests,
                Effects& effects, Wake& wake) {
  LeaseTest& test = tests.under_way;
  if (std::holds_alternative<Started>(event.what)) test = {};
  const auto* ask = std::get_if<Ask>(&event.what);
  if (ask != nullptr && ask->kind == AskKind::test_lease) {
    return take(picture, *ask, test, effects);
  }
  if (test.phase == LeasePhase::none) return begin_by_itself(picture, tests);
  Pass pass{picture, test, tests.results[test.actuator], effects, wake};
  // Whatever a person stops: here nothing is to run on against that.
  const bool stopped = ask != nullptr && ask->kind == AskKind::stop;
  if (stopped && test.phase < LeasePhase::cut) {
    return stop(pass, {Why::asked_to_stop, no_subject, {}});
  }
  go_on(pass);
}

}  // namespace tidewright::procedure
