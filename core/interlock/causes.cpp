#include "core/interlock/causes.hpp"

#include "core/base/mutant.hpp"
#include "core/rules/lost.hpp"
#include "core/signal/ruling.hpp"

namespace tidewright::interlock {
namespace {

using namespace std::chrono_literals;
using picture::Picture;
using room::Place;
using room::Quantity;
using state::Findings;

Reason because(Why why, std::uint8_t subject = no_subject) { return {why, subject, {}}; }

float to_float(double value) { return static_cast<float>(value); }

// Somebody is there: for so many minutes, or to try a lease of what goes with the fill.
bool is_attended(const Picture& picture) {
  const state::LeaseTest& test = picture.lease_tests.under_way;
  const bool tried = test.phase != state::LeasePhase::none && test.by_person &&
                     facts(picture.room.actuators[test.actuator].role).makes_water;
  return tried || picture.make_water.demand == state::Demand::attended;
}

Cause not_good(const Picture& picture, Quantity quantity, Place place, Why why) {
  const auto i = signal::ruling(picture.room, picture.signals, quantity, place);
  if (!i || picture.signals[*i].quality == Quality::good) return std::nullopt;
  if (mutant(Mutant::level_lost_ignored) && place == Place::vat) return std::nullopt;
  if (mutant(Mutant::high_high_lost_ignored) && place == Place::vat_high_high) {
    return std::nullopt;
  }
  return because(why, *i);
}

}  // namespace

Cause link_is_down(const Picture& picture, const Findings&) {
  if (picture.circumstances.link_up) return std::nullopt;
  const double down_for = seconds(picture.now - picture.circumstances.link_since);
  return Reason{Why::link_down, no_subject, {to_float(down_for)}};
}

Cause is_stopping(const Picture& picture, const Findings&) {
  if (!picture.circumstances.stopping) return std::nullopt;
  return because(Why::asked_to_stop);
}

Cause high_high_not_good(const Picture& picture, const Findings&) {
  return not_good(picture, Quantity::float_switch, Place::vat_high_high, Why::high_high_lost);
}

Cause level_not_good(const Picture& picture, const Findings&) {
  return not_good(picture, Quantity::level, Place::vat, Why::level_not_good);
}

Cause float_not_good(const Picture& picture, const Findings&) {
  return not_good(picture, Quantity::float_switch, Place::vat, Why::level_not_good);
}

// A limit, not the end of a fill: danger is believed at any quality, so the doubtful level counts.
// procedure/full ends the demand, and for that believes a good level only: a gauge that says too
// much must pause a fill, not finish it.
Cause vat_at_stop(const Picture& picture, const Findings&) {
  if (mutant(Mutant::level_at_stop_ignored)) return std::nullopt;
  if (picture.float_full) return because(Why::float_full, *picture.float_full);
  if (!picture.room.vat || !picture.room.vat->stop_at || !picture.level_doubtful) {
    return std::nullopt;
  }
  const Litres stop_at = *picture.room.vat->stop_at;
  if (*picture.level_doubtful < stop_at) return std::nullopt;
  return Reason{Why::level_at_stop,
                no_subject,
                {to_float(picture.level_doubtful->value), to_float(stop_at.value)}};
}

Cause concentrate_full(const Picture& picture, const Findings&) {
  if (picture.concentrate_full) return because(Why::float_full, *picture.concentrate_full);
  return not_good(picture, Quantity::float_switch, Place::concentrate, Why::level_not_good);
}

Cause mixing_vat_full(const Picture& picture, const Findings&) {
  const auto& vat = picture.room.mixing_vat;
  if (mutant(Mutant::mixing_vat_stop_ignored)) return std::nullopt;
  if (!vat || !vat->stop_at || !picture.mixing_level_doubtful) return std::nullopt;
  if (*picture.mixing_level_doubtful < *vat->stop_at) return std::nullopt;
  return Reason{Why::mixing_vat_at_stop,
                no_subject,
                {to_float(picture.mixing_level_doubtful->value), to_float(vat->stop_at->value)}};
}

Cause leak_not_seen(const Picture& picture, const Findings&) {
  if (mutant(Mutant::before_start_not_required)) return std::nullopt;
  if (picture.leak_watch == picture::Watch::awaited) {
    return because(Why::leak_not_seen, *picture.leak_doubtful);
  }
  if (picture.leak_watch == picture::Watch::lost) {
    const float silent = rules::seconds_without(picture, *picture.leak_doubtful);
    return Reason{Why::sensor_lost, *picture.leak_doubtful, {silent}};
  }
  return std::nullopt;
}

Cause unattended_without_leak_sensor(const Picture& picture, const Findings&) {
  if (picture.leak_watch != picture::Watch::none_installed || picture.room.accepts_no_leak_sensor ||
      is_attended(picture)) {
    return std::nullopt;
  }
  return because(Why::no_leak_sensor);
}

Cause unattended_without_lease(const Picture& picture, const Findings&) {
  if (is_attended(picture) || mutant(Mutant::lease_not_required)) return std::nullopt;
  for (std::size_t i = 0; i < picture.room.actuators.size(); ++i) {
    const room::Actuator& actuator = picture.room.actuators[i];
    if (actuator.lease_kind != room::LeaseKind::none || !facts(actuator.role).makes_water) continue;
    return because(Why::lease_unsupervised, static_cast<std::uint8_t>(i));
  }
  return std::nullopt;
}

Cause unattended_without_kept_lease(const Picture& picture, const Findings&) {
  if (is_attended(picture) || mutant(Mutant::failed_lease_holds_nothing)) return std::nullopt;
  for (std::size_t i = 0; i < picture.room.actuators.size(); ++i) {
    if (!facts(picture.room.actuators[i].role).makes_water) continue;
    if (!state::has_failed(picture.lease_tests.results[i])) continue;
    return because(Why::lease_not_kept, static_cast<std::uint8_t>(i));
  }
  return std::nullopt;
}

Cause settling_after_start(const Picture& picture, const Findings&) {
  const auto& known = picture.circumstances;
  if (!known.unclean || mutant(Mutant::no_wait_after_unclean_start) ||
      picture.now >= known.started + wait_after_unclean_start) {
    return std::nullopt;
  }
  return Reason{
      Why::settling_after_start, no_subject, {to_float(seconds(wait_after_unclean_start))}};
}

// As the rule judges it, without the delays of its alarm.
Cause frost(const Picture&, const Findings& findings) {
  const state::Finding& finding = findings[room::RuleId::frost];
  if (!finding.raw || mutant(Mutant::frost_ignored)) return std::nullopt;
  return finding.why;
}

}  // namespace tidewright::interlock
