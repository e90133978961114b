#include "core/water/blend.hpp"
#include "core/water/correction.hpp"
#include "core/water/dilution.hpp"
#include "core/water/dosing.hpp"
#include "core/water/dosing_uncertainty.hpp"
#include "core/water/evaporation.hpp"
#include "core/water/instrument.hpp"
#include "core/water/level.hpp"
#include "core/water/vessel_shape.hpp"
#include "tests/support/numbers.hpp"

namespace tidewright::water {

static bool all_finite(std::initializer_list<double> numbers) {
  for (double one : numbers) {
    if (!std::isfinite(one)) return false;
  }
  return true;
}
static bool is_finite(const Body& body) {
  return all_finite({body.volume.value, body.salinity.value, body.temperature.value});
}
static bool is_finite(const Batch& batch) {
  return all_finite({batch.fresh.value, batch.salt.value, batch.finished.value});
}
static bool is_finite(const Correction& steps) {
  return all_finite({steps.drain.value, steps.salt.value, steps.fresh.value, steps.finished.value});
}
static bool is_finite(const Estimate& one) {
  return all_finite({one.value, one.standard_uncertainty});
}
}  // namespace tidewright::water

namespace tidewright::support {
namespace {

using namespace water;
using In = const Numbers&;

Body body(In x) { return {{x[0]}, {x[1]}, {x[2]}}; }
Body other(In x) { return {{x[3]}, {x[4]}, {x[5]}}; }
double fraction(double number) { return number / 100; }
BatchChanges changes(In x) { return {x[0], x[1], fraction(x[2]), x[3]}; }
ContinuousChange flow(In x) { return {x[0], x[1], fraction(x[2]), x[3]}; }

VesselShape shape(In x) {
  switch (choice(x[0], 5)) {
    case 0:
      return UprightCylinder{{x[1]}, {x[2]}};
    case 1:
      return TruncatedCone{{x[1]}, {x[2]}, {x[3]}};
    case 2:
      return Box{{x[1]}, {x[2]}, {x[3]}};
    case 3:
      return LyingCylinder{{x[1]}, {x[2]}};
    default:
      break;
  }
  MeasuredTable table;
  for (std::size_t i = 1; i < 9; i += 2) table.points.push({{x[i]}, {x[i + 1]}});
  return table;
}

constexpr std::array all{
    NumberFunction{"mass", [](In x) { return outcome(mass(body(x))); }},
    NumberFunction{"salt_mass", [](In x) { return outcome(salt_mass(body(x))); }},
    NumberFunction{
        "batch_of_fresh",
        [](In x) { return outcome(batch_of_fresh({x[0]}, {x[1]}, {x[2]}, fraction(x[3]))); }},
    NumberFunction{
        "batch_of_finished",
        [](In x) { return outcome(batch_of_finished({x[0]}, {x[1]}, {x[2]}, fraction(x[3]))); }},
    NumberFunction{
        "salinity_of_batch",
        [](In x) { return outcome(salinity_of_batch({x[0]}, {x[1]}, {x[2]}, fraction(x[3]))); }},
    NumberFunction{"salt_yield",
                   [](In x) { return outcome(salt_yield({x[0]}, {x[1]}, {x[2]}, {x[3]})); }},
    NumberFunction{"correction",
                   [](In x) { return outcome(correction(body(x), {x[3]}, fraction(x[4]))); }},
    NumberFunction{
        "correction in a vat",
        [](In x) { return outcome(correction(body(x), {x[3]}, fraction(x[4]), Litres{x[5]})); }},
    NumberFunction{"blend", [](In x) { return outcome(blend(body(x), other(x))); }},
    NumberFunction{"exchange", [](In x) { return outcome(exchange(body(x), {x[6]}, other(x))); }},
    NumberFunction{"gentle_exchange",
                   [](In x) {
                     return outcome(gentle_exchange(body(x), other(x), {{x[6]}, {x[7]}}));
                   }},
    NumberFunction{"after_evaporation",
                   [](In x) { return outcome(after_evaporation(body(x), {x[3]})); }},
    NumberFunction{"after_top_up",
                   [](In x) { return outcome(after_top_up(body(x), {x[3]}, {x[4]})); }},
    NumberFunction{"evaporated_until",
                   [](In x) { return outcome(evaporated_until(body(x), {x[3]})); }},
    NumberFunction{"after_changes", [](In x) { return outcome(after_changes(changes(x), x[4])); }},
    NumberFunction{"steady_after_change",
                   [](In x) { return outcome(steady_after_change(changes(x))); }},
    NumberFunction{"steady_before_change",
                   [](In x) { return outcome(steady_before_change(changes(x))); }},
    NumberFunction{"changes_needed",
                   [](In x) { return outcome(changes_needed(changes(x), x[4])); }},
    NumberFunction{"composed_fraction",
                   [](In x) { return outcome(composed_fraction(fraction(x[0]), x[1])); }},
    NumberFunction{"after_days", [](In x) { return outcome(after_days(flow(x), x[4])); }},
    NumberFunction{"steady", [](In x) { return outcome(steady(flow(x))); }},
    NumberFunction{"days_needed", [](In x) { return outcome(days_needed(flow(x), x[4])); }},
    NumberFunction{"full_depth", [](In x) { return outcome(full_depth(shape(x))); }},
    NumberFunction{"volume_at", [](In x) { return outcome(volume_at(shape(x), {x[9]})); }},
    NumberFunction{"depth_at", [](In x) { return outcome(depth_at(shape(x), {x[9]})); }},
    NumberFunction{"depth_from_distance",
                   [](In x) { return outcome(depth_from_distance({x[0]}, {x[1]})); }},
    NumberFunction{"distance_from_depth",
                   [](In x) { return outcome(distance_from_depth({x[0]}, {x[1]})); }},
    NumberFunction{
        "depth_from_pressure",
        [](In x) { return outcome(depth_from_pressure({x[0]}, {1000 + x[1]}, {x[2]})); }},
    NumberFunction{
        "pressure_from_depth",
        [](In x) { return outcome(pressure_from_depth({x[0]}, {1000 + x[1]}, {x[2]})); }},
    NumberFunction{"salinity_by",
                   [](In x) {
                     Instrument one = instruments()[choice(x[0], instruments().size())];
                     one.reading = fraction(x[1]);
                     one.temperature = {x[2]};
                     one.salinity = {x[3]};
                     return outcome(salinity_by(one, x[4], {x[5]},
                                                static_cast<GravityScale>(choice(x[6], 8))));
                   }},
    NumberFunction{"salinity_estimate",
                   [](In x) {
                     return outcome(
                         salinity_estimate({x[0]}, {x[1]}, {x[2]}, fraction(x[3]),
                                           {fraction(x[4]), fraction(x[5]), fraction(x[6])}));
                   }},
};

}  // namespace

std::span<const NumberFunction> mixture_functions() { return all; }

}  // namespace tidewright::support
