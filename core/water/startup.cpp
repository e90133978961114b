#include "core/water/startup.hpp"

namespace tidewright::water {
namespace {

constexpr Range steadies{"steady permeate", "mg/L", 0, 1e5};
constexpr Range some_steadies{"steady permeate", "mg/L", 0.001, 1e5};
constexpr Range flows{"flow", "L/h", 0.01, 1e5};
constexpr Range hold_ups{"hold-up", "L", 0.001, 1000};
constexpr Range half_ways{"half-way time", "min", 0.001, 1e4};
constexpr Range run_minutes{"running time", "min", 0, 1e6};
constexpr Range margins{"margin", "mg/L", 0.001, 1e5};
constexpr Range starts{"starts", "a day", 0, 1000};
constexpr Range daily_litres{"made", "L a day", 0.1, 1e6};
constexpr Range excesses{"excess of a start", "mg", 0, 1e6};

std::optional<Outside> unfit(const StartUp& run) {
  return first(
      outside(steadies, run.steady.value),
      outside(Range{"permeate at the start", "mg/L", run.steady.value, 1e5}, run.start.value),
      outside(flows, run.flow.value), outside(hold_ups, run.hold_up.value));
}

// Requires a fit run.
double time_constant(const StartUp& run) { return 60 * run.hold_up.value / run.flow.value; }

}  // namespace

Answer<Litres> hold_up_of(LitresPerHour flow, double half_way_minutes) {
  if (const auto bad = first(outside(flows, flow.value), outside(half_ways, half_way_minutes))) {
    return *bad;
  }
  const Litres found{flow.value * half_way_minutes / 60 / std::log(2.0)};
  if (const auto bad = outside(hold_ups, found.value)) return *bad;
  return found;
}

Answer<double> time_constant_minutes(const StartUp& run) {
  if (const auto bad = unfit(run)) return *bad;
  return time_constant(run);
}

Answer<MilligramsPerLitre> permeate_after(const StartUp& run, double minutes) {
  if (const auto bad = first(unfit(run), outside(run_minutes, minutes))) return *bad;
  return run.steady + (run.start - run.steady) * std::exp(-minutes / time_constant(run));
}

Answer<double> minutes_until_within(const StartUp& run, MilligramsPerLitre margin) {
  if (const auto bad = first(unfit(run), outside(margins, margin.value))) return *bad;
  const MilligramsPerLitre above = run.start - run.steady;
  return above <= margin ? 0 : time_constant(run) * std::log(above / margin);
}

Answer<StartUpCost> start_up_cost(const StartUp& run) {
  if (const auto bad = first(unfit(run), outside(some_steadies, run.steady.value))) return *bad;
  const double excess_mg = (run.start - run.steady).value * run.hold_up.value;
  const Litres equal{excess_mg / run.steady.value};
  return StartUpCost{excess_mg, equal, 60 * equal.value / run.flow.value};
}

Answer<CycleLoad> cycle_load(double starts_per_day, Litres made_per_day, MilligramsPerLitre steady,
                             double excess_mg_per_start) {
  if (const auto bad =
          first(outside(starts, starts_per_day), outside(daily_litres, made_per_day.value),
                outside(some_steadies, steady.value), outside(excesses, excess_mg_per_start))) {
    return *bad;
  }
  const MilligramsPerLitre extra{starts_per_day * excess_mg_per_start / made_per_day.value};
  return CycleLoad{steady + extra, extra / steady};
}

}  // namespace tidewright::water
