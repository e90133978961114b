#include "core/water/meter_display.hpp"

#include "core/water/pure_water.hpp"
#include "core/water/solve.hpp"

namespace tidewright::water {
namespace {

constexpr Range steps{"step of the display", "mg/L", 0.001, 100};
constexpr Range small_steps{"step of the display", "mg/L", 0.1, 10};
constexpr Celsius reference{25};

}  // namespace

Answer<MilligramsPerLitre> shown(MicrosiemensPerCm at_25, const MeterDisplay& display) {
  if (const auto bad = outside(steps, display.step_mg_l)) return *bad;
  const Answer<MilligramsPerLitre> solids = dissolved_solids(at_25, display.scale);
  if (!solids) return solids;
  const double counted = solids->value / display.step_mg_l;
  return MilligramsPerLitre{(display.rounds ? std::round(counted) : std::floor(counted)) *
                            display.step_mg_l};
}

Answer<BehindZero> behind_zero(const MeterDisplay& display) {
  if (const auto bad = outside(small_steps, display.step_mg_l)) return *bad;
  const double hidden = display.rounds ? display.step_mg_l / 2 : display.step_mg_l;
  const Answer<MicrosiemensPerCm> conductivity =
      conductivity_of_solids(MilligramsPerLitre{hidden}, display.scale);
  if (!conductivity) return *conductivity.outside();
  const auto of_salt = [](double salt) {
    return trace_salt_conductivity(MilligramsPerLitre{salt}, reference)->value;
  };
  const double salt = solve(of_salt, conductivity->value, {0, 20}, 1e-9).value_or(0);
  return BehindZero{*conductivity, MilligramsPerLitre{salt}, 1 / conductivity->value};
}

}  // namespace tidewright::water
