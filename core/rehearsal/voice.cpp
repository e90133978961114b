#include "core/rehearsal/voice.hpp"

#include <cmath>
#include <utility>

namespace tidewright::rehearsal {

Voice::Voice(const room::Instrument& instrument, const VoiceSettings& settings, std::uint64_t seed,
             Instant begins)
    : instrument_(&instrument), settings_(settings), chance_(seed), heard_(begins) {
  const double phase = chance_.uniform();
  next_ = begins +
          Duration{static_cast<Duration::rep>(phase * static_cast<double>(interval().count()))};
}

Duration Voice::interval() {
  const auto every = static_cast<double>(instrument_->reports_every.count());
  // An instrument that speaks on change checks in before its longest silence is over; the others
  // keep their time within a few percent (common practice, no source).
  const double share = instrument_->on_change ? 0.4 : 0.98 + 0.04 * chance_.uniform();
  return Duration{static_cast<Duration::rep>(every * share) + 1};
}

double Voice::shown(double truth) {
  const double spread = settings_.noise + settings_.relative_noise * std::abs(truth);
  const double measured = spread > 0 ? truth + spread * chance_.normal() : truth;
  if (settings_.step <= 0) return measured;
  return settings_.step * std::round(measured / settings_.step);
}

std::optional<Utterance> Voice::speak(double truth, Instant now) {
  const bool due = now >= next_;
  if (!due && !instrument_->on_change) return std::nullopt;
  if (due) next_ = now + interval();
  if (faults.dies_of_yes && truth >= 0.5) faults.silent = true;
  if (faults.silent) return std::nullopt;
  if (faults.spike) return Utterance{true, *std::exchange(faults.spike, std::nullopt)};
  const double drifted = truth + faults.drifts_per_hour * hours(now - faults.drifts_since);
  const double value = faults.stuck && has_said_ ? said_ : shown(drifted);
  const double least = settings_.step > 0 ? settings_.step / 2 : 1e-9;
  const bool moved = !has_said_ || std::abs(value - said_) >= least;
  if (!due && !moved) return std::nullopt;
  heard_ = now;
  said_ = value;
  has_said_ = true;
  if (settings_.lost > 0 && chance_.uniform() < settings_.lost) return std::nullopt;
  return Utterance{!faults.garbage, value};
}

std::optional<bool> Voice::availability(Instant now) {
  if (!instrument_->has_availability) return std::nullopt;
  // One late report of those that keep time is nothing to a hub.
  const Duration patience =
      instrument_->on_change ? instrument_->reports_every : 2 * instrument_->reports_every;
  const bool online = !faults.offline && now - heard_ <= patience;
  if (online == online_) return std::nullopt;
  online_ = online;
  return online;
}

}  // namespace tidewright::rehearsal
