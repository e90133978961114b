// The causes that are different for each actuator.
#include "core/base/mutant.hpp"
#include "core/interlock/causes.hpp"

namespace tidewright::interlock {
namespace {

using namespace std::chrono_literals;
using picture::Picture;
using room::ActuatorIndex;
using room::Place;
using room::Quantity;
using room::Role;
using state::Findings;

float to_float(double value) { return static_cast<float>(value); }

Role role_of(const Picture& picture, std::size_t i) { return picture.room.actuators[i].role; }

Cause limit_of(const Picture& picture, std::size_t i) {
  const room::Actuator& actuator = picture.room.actuators[i];
  const state::Working& working = picture.ledger.working[i];
  const auto reached = [&](Why why, Duration limit) {
    const float allowed = to_float(hours(limit));
    return Reason{why, static_cast<std::uint8_t>(i), {allowed, allowed}};
  };
  if (working.on && working.run >= actuator.run_longest) {
    return reached(Why::run_longest, actuator.run_longest);
  }
  if (working.day >= actuator.on_per_day_longest && actuator.on_per_day_longest < Duration{24h}) {
    return reached(Why::day_longest, actuator.on_per_day_longest);
  }
  return std::nullopt;
}

Cause below(const std::optional<Litres>& level, const std::optional<Litres>& low, Why why) {
  if (!level || !low || *level >= *low) return std::nullopt;
  return Reason{why, no_subject, {to_float(level->value), to_float(low->value)}};
}

// The closed fill valve leaves the product no way out, unless it runs to the drain.
bool dammed_up(const Picture& picture) {
  if (!room::find(picture.room, Role::fill_valve)) return false;
  const auto divert = room::find(picture.room, Role::divert_valve);
  return !divert || !picture.drives[*divert].on;
}

}  // namespace

// What ignores OFF is stopped by stopping all that moves water. What ignores ON floods nothing, and
// only what goes with it has no use any more.
Cause disobedience(const Picture& picture, const Findings& findings, ActuatorIndex i) {
  const state::Finding& finding = findings[room::RuleId::actuator_disobeys];
  if (!finding.active || !finding.raw) return std::nullopt;
  const bool off = finding.why.why == Why::off_not_obeyed;
  const bool stopped = off && facts(role_of(picture, i)).moves_water;
  if (!stopped && !room::go_together(picture.room, i, finding.why.subject)) return std::nullopt;
  return finding.why;
}

Cause product_over_stop(const Picture& picture, const Findings& findings, ActuatorIndex i) {
  const auto& purifier = picture.room.purifier;
  const bool found = findings[room::RuleId::resin_breakthrough].active;
  if (!purifier || !found || !picture.product || picture.product->ppm < purifier->stop_at) {
    return std::nullopt;
  }
  const bool chosen = purifier->on_breakthrough == room::OnBreakthrough::stop_pump;
  const bool stops = role_of(picture, i) == Role::fill_valve || chosen || dammed_up(picture);
  if (!stops) return std::nullopt;
  return Reason{Why::product_above_zero,
                no_subject,
                {to_float(picture.product->ppm.value), to_float(purifier->stop_at.value),
                 to_float(picture.product->litres.value)}};
}

// Too little is a danger, believed at any quality.
Cause level_low(const Picture& picture, const Findings&, ActuatorIndex i) {
  if (role_of(picture, i) == Role::transfer_pump) {
    if (!picture.room.vat) return std::nullopt;
    return below(picture.level_doubtful, picture.room.vat->low, Why::level_below);
  }
  if (!picture.room.mixing_vat) return std::nullopt;
  if (mutant(Mutant::heater_runs_below_low) && role_of(picture, i) == Role::heater) {
    return std::nullopt;
  }
  return below(picture.mixing_level_doubtful, picture.room.mixing_vat->low,
               Why::mixing_level_below);
}

Cause mixing_level_not_good(const Picture& picture, const Findings&, ActuatorIndex i) {
  const auto gauge = room::find(picture.room, Quantity::level, Place::mixing_vat);
  if (!gauge) {
    if (role_of(picture, i) != Role::heater) return std::nullopt;
    return Reason{Why::no_mixing_level, no_subject, {}};
  }
  if (picture.signals[*gauge].quality == Quality::good) return std::nullopt;
  return Reason{Why::level_not_good, *gauge, {}};
}

Cause ran_too_long(const Picture& picture, const Findings&, ActuatorIndex i) {
  for (std::size_t n = 0; n < picture.room.actuators.size(); ++n) {
    const auto other = static_cast<ActuatorIndex>(n);
    if (!room::go_together(picture.room, i, other)) continue;
    if (const Cause reached = limit_of(picture, other)) return reached;
  }
  return std::nullopt;
}

}  // namespace tidewright::interlock
