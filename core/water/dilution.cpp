#include "core/water/dilution.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace tidewright::water {
namespace {

constexpr Range concentrations{"concentration", "", 0, 1e6};
constexpr Range incoming_concentrations{"concentration of the new water", "", 0, 1e6};
constexpr Range gains{"gain", "", -1e6, 1e6};
constexpr Range fractions{"changed fraction", "", 1e-4, 1};
constexpr Range all_times{"number of changes", "", 0, 1e5};

std::optional<Outside> unsound(const BatchChanges& changes) {
  return first(outside(concentrations, changes.now),
               outside(incoming_concentrations, changes.incoming),
               outside(fractions, changes.fraction), outside(gains, changes.gain));
}

std::optional<Outside> unsound(const ContinuousChange& change) {
  return first(outside(concentrations, change.now),
               outside(incoming_concentrations, change.incoming),
               outside({"fraction changed in a day", "", 1e-6, 1000}, change.fraction_per_day),
               outside(gains, change.gain_per_day));
}

double rest_after_change(const BatchChanges& changes) {
  return changes.incoming + changes.gain * (1 - changes.fraction) / changes.fraction;
}

double rest(const ContinuousChange& change) {
  return change.incoming + change.gain_per_day / change.fraction_per_day;
}

// More was used up than there is: a concentration ends at nothing.
double or_nothing(double concentration) { return std::max(0.0, concentration); }

// What of the distance to the end is left when `target` is reached; none if it never is.
std::optional<double> share_left(double now, double end, double target) {
  if (target == now) return 1;
  const double left = (target - end) / (now - end);
  return left > 0 && left < 1 ? std::optional(left) : std::nullopt;
}

Outside never_reached(double now, double end, double target) {
  return {{"target", "", std::min(now, end), std::max(now, end)}, target};
}

}  // namespace

Answer<double> after_changes(const BatchChanges& changes, double times) {
  if (const auto found = first(unsound(changes), outside(all_times, times))) return *found;
  const double left = std::pow(1 - changes.fraction, times);
  const double end = rest_after_change(changes);
  return or_nothing(end + (changes.now - end) * left);
}

Answer<double> steady_after_change(const BatchChanges& changes) {
  if (const auto found = unsound(changes)) return *found;
  return or_nothing(rest_after_change(changes));
}

Answer<double> steady_before_change(const BatchChanges& changes) {
  if (const auto found = unsound(changes)) return *found;
  return or_nothing(changes.incoming + changes.gain / changes.fraction);
}

Answer<double> changes_needed(const BatchChanges& changes, double target) {
  if (const auto found = first(unsound(changes), outside(concentrations, target))) return *found;
  const double end = rest_after_change(changes);
  const auto left = share_left(changes.now, end, target);
  if (!left) return never_reached(changes.now, end, target);
  if (changes.fraction == 1) return *left == 1 ? 0.0 : 1.0;
  return std::log(*left) / std::log1p(-changes.fraction);
}

Answer<double> composed_fraction(double fraction, double times) {
  if (const auto found = first(outside(fractions, fraction), outside(all_times, times))) {
    return *found;
  }
  return 1 - std::pow(1 - fraction, times);
}

Answer<double> after_days(const ContinuousChange& change, double days) {
  if (const auto found = first(unsound(change), outside({"days", "", 0, 1e5}, days))) {
    return *found;
  }
  const double end = rest(change);
  return or_nothing(end + (change.now - end) * std::exp(-change.fraction_per_day * days));
}

Answer<double> steady(const ContinuousChange& change) {
  if (const auto found = unsound(change)) return *found;
  return or_nothing(rest(change));
}

Answer<double> days_needed(const ContinuousChange& change, double target) {
  if (const auto found = first(unsound(change), outside(concentrations, target))) return *found;
  const double end = rest(change);
  const auto left = share_left(change.now, end, target);
  if (!left) return never_reached(change.now, end, target);
  return -std::log(*left) / change.fraction_per_day;
}

}  // namespace tidewright::water
