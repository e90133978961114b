#include "core/interlock/causes.hpp"

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

bool is_attended(const Picture& picture) {
  return picture.make_water.demand == state::Demand::attended;
}

Cause not_good(const Picture& picture, Quantity quantity, Place place, Why why) {
  const auto i = signal::ruling(picture.room, picture.signals, quantity, place);
  if (!i || picture.signals[*i].quality == Quality::good) return std::nullopt;
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

Cause product_over_stop(const Picture& picture, const Findings& findings) {
  const auto& purifier = picture.room.purifier;
  if (!purifier || purifier->on_breakthrough != room::OnBreakthrough::stop_pump) {
    return std::nullopt;
  }
  const bool found = findings[room::RuleId::resin_breakthrough].active;
  if (!found || !picture.product || picture.product->ppm < purifier->stop_at) return std::nullopt;
  return Reason{Why::product_above_zero,
                no_subject,
                {to_float(picture.product->ppm.value), to_float(purifier->stop_at.value),
                 to_float(picture.product->litres.value)}};
}

Cause ran_too_long(const Picture& picture, const Findings&) {
  for (std::size_t i = 0; i < picture.room.actuators.size(); ++i) {
    const room::Actuator& actuator = picture.room.actuators[i];
    const state::Working& working = picture.ledger.working[i];
    const auto subject = static_cast<std::uint8_t>(i);
    if (working.on && working.run >= actuator.run_longest) {
      return Reason{Why::run_longest,
                    subject,
                    {to_float(hours(actuator.run_longest)), to_float(hours(actuator.run_longest))}};
    }
    if (working.day >= actuator.on_per_day_longest && actuator.on_per_day_longest < Duration{24h}) {
      return Reason{Why::day_longest,
                    subject,
                    {to_float(hours(actuator.on_per_day_longest)),
                     to_float(hours(actuator.on_per_day_longest))}};
    }
  }
  return std::nullopt;
}

Cause leak_not_seen(const Picture& picture, const Findings&) {
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
  if (is_attended(picture)) return std::nullopt;
  for (std::size_t i = 0; i < picture.room.actuators.size(); ++i) {
    if (picture.room.actuators[i].lease_kind != room::LeaseKind::none) continue;
    return because(Why::lease_unsupervised, static_cast<std::uint8_t>(i));
  }
  return std::nullopt;
}

Cause settling_after_start(const Picture& picture, const Findings&) {
  const auto& known = picture.circumstances;
  if (!known.unclean || picture.now >= known.started + wait_after_unclean_start) {
    return std::nullopt;
  }
  return Reason{
      Why::settling_after_start, no_subject, {to_float(seconds(wait_after_unclean_start))}};
}

Cause frost(const Picture& picture, const Findings&) {
  if (!picture.room.purifier) return std::nullopt;
  const Celsius limit = picture.room.purifier->frost_below;
  for (std::size_t i = 0; i < picture.room.instruments.size(); ++i) {
    const state::Signal& signal = picture.signals[i];
    if (picture.room.instruments[i].quantity != Quantity::temperature) continue;
    if (!signal.seen || signal.quality == Quality::bad || signal.value >= limit.value) continue;
    return Reason{
        Why::frost, static_cast<std::uint8_t>(i), {to_float(signal.value), to_float(limit.value)}};
  }
  return std::nullopt;
}

}  // namespace tidewright::interlock
