#include "core/interlock/command.hpp"

#include <algorithm>
#include <array>

#include "core/base/mutant.hpp"

namespace tidewright::interlock {
namespace {

using namespace std::chrono_literals;
using state::Drive;

// A command that lay somewhere for longer must not be obeyed any more.
constexpr Duration command_life = 10s;
constexpr std::array<Duration, 3> off_repeats{1s, 2s, 4s};
constexpr Duration off_repeats_then = 60s;
constexpr Duration unheard_apart = 60s;
constexpr Duration wet_answers_apart = 500ms;
// A person who pressed the button is taken to be there for so long.
constexpr Duration by_hand_longest = 30min;
// After that it is told so no more often than this, where nothing forbids the run.
constexpr Duration by_hand_apart = 60s;

// One actuator in one pass.
struct Pass {
  const picture::Picture& picture;
  const room::ActuatorIndex index;
  const room::Actuator& actuator;
  const Order& order;
  const std::optional<bool> feedback;
  Drive& drive;
  Effects& effects;
  Wake& wake;
  bool sent = false;  // a command has left in this pass
};

void send(Pass& pass) {
  const Duration life = mutant(Mutant::remembers_beside_state)
                            ? command_life - Duration{remembered_beside_state() % 1000}
                            : command_life;
  pass.effects.push(Command{pass.index, pass.drive.on, life});
  pass.drive.sent = pass.picture.now;
  pass.sent = true;
}

void switch_to(Pass& pass, bool on, const Reason& why) {
  Drive& drive = pass.drive;
  drive.on = on;
  drive.why = why;
  drive.obeyed = false;
  drive.commanded = pass.picture.now;
  drive.resent = 0;
  if (on) {
    std::shift_right(drive.starts.begin(), drive.starts.end(), 1);
    drive.starts[0] = pass.picture.now;
  }
  send(pass);
}

void hear(Pass& pass) {
  if (pass.feedback != pass.drive.on) return;
  pass.drive.obeyed = true;
  if (pass.drive.on) pass.drive.ignored = 0;
  pass.drive.resent = 0;
}

// Whether the run has ended by other hands than ours: the plug's own auto-off, a person, or because
// ON was never obeyed.
std::optional<Reason> ended_elsewhere(Pass& pass) {
  Drive& drive = pass.drive;
  const Instant now = pass.picture.now;
  if (pass.actuator.lease_kind == room::LeaseKind::plug_fixed && pass.order.renewed) {
    const Instant auto_off = drive.commanded + pass.actuator.lease;
    const auto rest = static_cast<float>(seconds(pass.actuator.off_shortest));
    if (now >= auto_off) return Reason{Why::resting, pass.index, {rest}};
    pass.wake.by(auto_off);
  }
  if (pass.feedback != false) return std::nullopt;
  if (drive.obeyed) return Reason{Why::switched_by_hand, pass.index, {}};
  const Instant due = drive.commanded + room::feedback_due(pass.picture.room, pass.index);
  if (now < due) {
    pass.wake.by(due);
    return std::nullopt;
  }
  ++drive.ignored;
  return Reason{
      Why::on_not_obeyed, pass.index, {static_cast<float>(seconds(now - drive.commanded))}};
}

void keep_on(Pass& pass) {
  if (const auto ended = ended_elsewhere(pass)) return switch_to(pass, false, *ended);
  const auto kind = pass.actuator.lease_kind;
  if (kind == room::LeaseKind::plug_fixed || kind == room::LeaseKind::none) return;
  if (!pass.order.renewed) return;
  const Duration renewed_every = pass.actuator.lease / 3;
  if (pass.picture.now >= pass.drive.sent + renewed_every) send(pass);
  pass.wake.by(pass.drive.sent + renewed_every);
}

// When it may start again: after its rest, and not too often in an hour.
Instant rested_at(const Pass& pass) {
  const auto& starts = pass.drive.starts;
  const Instant rest = pass.drive.commanded + pass.actuator.off_shortest;
  if (mutant(Mutant::rest_ignored)) return pass.picture.now;
  const auto oldest = static_cast<std::size_t>(pass.actuator.starts_per_hour_max) - 1;
  if (oldest >= starts.size() || starts[oldest] == long_ago) return rest;
  return std::max(rest, starts[oldest] + 1h);
}

void start_when_rested(Pass& pass) {
  const Instant rested = rested_at(pass);
  if (pass.picture.now >= rested) return switch_to(pass, true, pass.order.want);
  pass.wake.by(rested);
  const auto rest = static_cast<float>(seconds(pass.actuator.off_shortest));
  pass.drive.why = {Why::resting, pass.index, {rest}};
}

// When the next OFF is due against an actuator that says ON.
Instant next_off(const Pass& pass) {
  const Drive& drive = pass.drive;
  // Once obeyed, an ON is somebody's hand on the button.
  if (drive.obeyed && pass.order.held.hold < Hold::force_off) {
    const Instant left_alone = pass.picture.ledger.working[pass.index].since + by_hand_longest;
    return std::max(left_alone, drive.sent + by_hand_apart);
  }
  if (drive.obeyed && drive.resent == 0) return pass.picture.now;
  const std::size_t n = drive.resent;
  return drive.sent + (n < off_repeats.size() ? off_repeats[n] : off_repeats_then);
}

void insist_on_off(Pass& pass) {
  if (pass.feedback != true || pass.sent || mutant(Mutant::off_not_repeated)) return;
  const Instant due = next_off(pass);
  if (pass.picture.now < due) return pass.wake.by(due);
  send(pass);
  if (pass.drive.resent < 255) ++pass.drive.resent;
  pass.wake.by(next_off(pass));
}

// An OFF that reached nobody, as after a restart of the broker that the plug has not yet noticed,
// is said again until somebody hears it or the feedback says that it is off anyway.
void repeat_unheard(Pass& pass) {
  const auto code = pass.picture.circumstances.delivery[pass.index];
  if (code == 0 || pass.feedback == false || pass.sent) return;
  const Instant due = pass.drive.sent + unheard_apart;
  if (pass.picture.now < due) return pass.wake.by(due);
  send(pass);
  pass.wake.by(pass.drive.sent + unheard_apart);
}

bool is_wet(const picture::Picture& picture, const Event& event) {
  const auto* reading = std::get_if<Reading>(&event.what);
  return reading != nullptr && reading->value >= 0.5 &&
         picture.room.instruments[reading->instrument].quantity == room::Quantity::wetness;
}

// Every report of water is answered, also when the trip already stands.
void answer_wet(Pass& pass, const Event& event) {
  if (pass.sent || !facts(pass.actuator.role).moves_water) return;
  if (!is_wet(pass.picture, event) || mutant(Mutant::wet_not_answered)) return;
  const bool confirmed_off = pass.feedback == false;
  if (confirmed_off && pass.picture.now - pass.drive.sent < wet_answers_apart) return;
  send(pass);
}

// After a start, a new link or at the end, OFF is said whatever is believed.
bool must_say_off(const Event& event) {
  const auto* link = std::get_if<Link>(&event.what);
  return (link != nullptr && link->up && !mutant(Mutant::link_return_keeps_on)) ||
         std::holds_alternative<Stopping>(event.what);
}

void decide_one(Pass& pass, const Event& event) {
  Drive& drive = pass.drive;
  const Order& order = pass.order;
  const Hold hold = order.held.hold;
  drive.wanted = order.wanted;
  drive.may_start = hold == Hold::none;
  drive.held = hold >= Hold::force_off || (hold == Hold::inhibit && !drive.on);
  if (hold == Hold::trip) drive.ignored = 0;
  hear(pass);

  const Reason& rest = drive.held ? order.held.why : order.want;
  if (must_say_off(event) || (drive.on && (drive.held || !order.wanted))) {
    switch_to(pass, false, rest);
  } else if (drive.on) {
    keep_on(pass);
  } else if (order.wanted && !drive.held) {
    start_when_rested(pass);
  } else {
    drive.why = rest;
  }
  if (drive.on) return;
  insist_on_off(pass);
  repeat_unheard(pass);
  answer_wet(pass, event);
}

}  // namespace

void command(const picture::Picture& picture, const Event& event, room::ActuatorIndex index,
             const Order& order, Drive& drive, Effects& effects, Wake& wake) {
  if (!picture.circumstances.link_up) {
    if (drive.on || std::holds_alternative<Started>(event.what)) drive.commanded = picture.now;
    drive.on = drive.on && mutant(Mutant::link_return_keeps_on);
    drive.wanted = order.wanted;
    drive.held = true;
    drive.may_start = false;
    drive.why = order.held.why;
    return;
  }
  Pass pass{.picture = picture,
            .index = index,
            .actuator = picture.room.actuators[index],
            .order = order,
            .feedback = picture::confirmed(picture, index),
            .drive = drive,
            .effects = effects,
            .wake = wake};
  decide_one(pass, event);
}

}  // namespace tidewright::interlock
