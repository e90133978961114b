#include <algorithm>
#include <limits>

#include "core/water/breakthrough.hpp"
#include "core/water/carbon_filter.hpp"
#include "core/water/carbonate.hpp"
#include "core/water/dissolved_solids.hpp"
#include "core/water/filling.hpp"
#include "core/water/hardness.hpp"
#include "core/water/ionic_conductance.hpp"
#include "core/water/irrigation.hpp"
#include "core/water/lead_lag.hpp"
#include "core/water/membrane.hpp"
#include "core/water/membrane_series.hpp"
#include "core/water/membrane_temperature.hpp"
#include "core/water/meter_display.hpp"
#include "core/water/normalisation.hpp"
#include "core/water/pure_water.hpp"
#include "core/water/resin.hpp"
#include "core/water/sediment_filter.hpp"
#include "core/water/sodium_hazard.hpp"
#include "core/water/startup.hpp"
#include "core/water/water_grade.hpp"
#include "tests/support/numbers.hpp"

namespace tidewright::water {

// Found beside these types by outcome().
static bool is_finite(Restriction) { return true; }
static bool is_finite(Hardness) { return true; }

template <class... Numbers>
static bool all_finite(Numbers... numbers) {
  return (std::isfinite(numbers) && ...);
}

static bool is_finite(const AlongMembrane& a) {
  return all_finite(a.concentrate_over_feed, a.permeate_over_feed, a.apparent_rejection);
}

static bool is_finite(const MembraneSeries& s) {
  return all_finite(s.permeate_first.value, s.feed_second.value, s.permeate_second.value,
                    s.concentrate.value, s.permeate.value, s.permeate_first_flow.value,
                    s.permeate_second_flow.value, s.concentrate_flow.value, s.recovery, s.rejection,
                    s.concentrate_per_permeate);
}

static bool is_finite(const BehindZero& z) {
  return all_finite(z.conductivity.value, z.sodium_chloride.value, z.megohm_cm);
}

static bool is_finite(const CarbonateConstants& c) {
  return all_finite(c.first_acid, c.second_acid, c.solubility);
}

static bool is_finite(const AirEquilibrium& a) {
  return all_finite(a.carbon_dioxide.value, a.ph, a.conductivity.value);
}

static bool is_finite(const ResinLoad& l) { return all_finite(l.cation.value, l.anion.value); }

static bool is_finite(const ResinRun& r) {
  return all_finite(r.by_cation.value, r.by_anion.value, r.litres.value);
}

static bool is_finite(const Breakthrough& b) { return all_finite(b.half.value, b.spread.value); }

static bool is_finite(const Rotation& r) {
  return all_finite(r.litres_over_half, r.utilisation, r.behind_lead, r.behind_lag);
}

static bool is_finite(const CanistersLeft& c) { return all_finite(c.lead, c.lag); }

static bool is_finite(const StartUpCost& c) {
  return all_finite(c.excess_mg, c.equal_litres.value, c.equal_minutes);
}

static bool is_finite(const CycleLoad& c) { return all_finite(c.mean.value, c.extra); }
static bool is_finite(const CarbonLife& l) { return all_finite(l.feed_litres.value, l.days); }
static bool is_finite(const CarbonLeft& l) { return all_finite(l.days); }
static bool is_finite(const Langelier& l) { return all_finite(l.saturation_ph, l.index); }

static bool is_finite(const ScaleWater& w) {
  return all_finite(w.temperature.value, w.dissolved_solids.value, w.calcium.value,
                    w.alkalinity.value, w.ph);
}

static bool is_finite(const Flood& f) { return all_finite(f.water.value, f.depth.value); }

}  // namespace tidewright::water

namespace tidewright::support {
namespace {

using namespace water;
using In = const Numbers&;

// A number of the water room as a fraction, or nearly.
double part(double number) { return number / 70; }

// Times a factor, but still a number.
double times(double number, double factor) {
  return std::clamp(number * factor, std::numeric_limits<double>::lowest(),
                    std::numeric_limits<double>::max());
}

SolidsScale scale(double number) { return static_cast<SolidsScale>(choice(number, 3)); }

MembraneConditions conditions(In x, std::size_t first) {
  return {{x[first]},         {part(x[first + 1])}, {part(x[first + 2])}, {times(x[first + 3], 10)},
          part(x[first + 4]), {x[first + 5]}};
}

Breakthrough curve(In x) { return {{x[0]}, {times(x[0], part(x[1]))}}; }
StartUp start(In x) { return {{x[0]}, {times(x[0], part(x[1]))}, {x[2]}, {x[3]}}; }
IrrigationIons ions(In x) { return {{x[0]}, {x[1]}, {x[2]}, {x[3]}}; }
CarbonFilter filter(In x) { return {{times(x[0], 100)}, {times(part(x[1]), 10)}, part(x[2])}; }

constexpr std::array all{
    NumberFunction{"temperature_factor",
                   [](In x) {
                     return outcome(temperature_factor(
                         {x[0]}, {times(x[1], 100), times(x[2], 100), 273 + part(x[3]) / 10}));
                   }},
    NumberFunction{"salt_passage", [](In x) { return outcome(salt_passage_of(x[0], x[1])); }},
    NumberFunction{
        "rejection",
        [](In x) { return outcome(rejection(PartsPerMillion{x[0]}, PartsPerMillion{x[1]})); }},
    NumberFunction{"recovery", [](In x) { return outcome(recovery({x[0]}, {x[1]})); }},
    NumberFunction{"concentration_factor",
                   [](In x) { return outcome(concentration_factor(part(x[0]), part(x[1]))); }},
    NumberFunction{"mean_concentration_factor",
                   [](In x) { return outcome(mean_concentration_factor(part(x[0]))); }},
    NumberFunction{"along_membrane",
                   [](In x) { return outcome(along_membrane(part(x[0]), part(x[1]))); }},
    NumberFunction{"local_rejection",
                   [](In x) { return outcome(local_rejection(part(x[0]), part(x[1]))); }},
    NumberFunction{"membranes_in_series",
                   [](In x) {
                     return outcome(membranes_in_series({x[0]}, {x[1]}, {part(x[2]), part(x[3])},
                                                        {part(x[4]), part(x[5])}));
                   }},
    NumberFunction{"osmotic_pressure",
                   [](In x) { return outcome(osmotic_pressure({times(x[0], 900)}, {x[1]})); }},
    NumberFunction{"net_driving_pressure",
                   [](In x) { return outcome(net_driving_pressure(conditions(x, 0))); }},
    NumberFunction{"flow_at",
                   [](In x) {
                     return outcome(flow_at({x[12]}, conditions(x, 0), conditions(x, 6),
                                            {times(x[13], 100), times(x[14], 100), 273.15}));
                   }},
    NumberFunction{"permeate_at",
                   [](In x) {
                     return outcome(
                         permeate_at({x[12]}, conditions(x, 0), {x[13]}, conditions(x, 6)));
                   }},
    NumberFunction{"hydrogen_conductance",
                   [](In x) { return outcome(hydrogen_conductance({x[0]})); }},
    NumberFunction{"hydroxide_conductance",
                   [](In x) { return outcome(hydroxide_conductance({x[0]})); }},
    NumberFunction{"sodium_chloride_conductance",
                   [](In x) { return outcome(sodium_chloride_conductance({x[0]})); }},
    NumberFunction{"bicarbonate_conductance",
                   [](In x) { return outcome(bicarbonate_conductance({x[0]})); }},
    NumberFunction{"water_ionisation", [](In x) { return outcome(water_ionisation({x[0]})); }},
    NumberFunction{"pure_water_conductivity",
                   [](In x) { return outcome(pure_water_conductivity({x[0]})); }},
    NumberFunction{"trace_salt_conductivity",
                   [](In x) { return outcome(trace_salt_conductivity({x[0]}, {x[1]})); }},
    NumberFunction{"compensated_pure_water",
                   [](In x) { return outcome(compensated_pure_water({x[0]}, {x[1]})); }},
    NumberFunction{"conductivity_limit_uncompensated",
                   [](In x) { return outcome(conductivity_limit_uncompensated({x[0]})); }},
    NumberFunction{"dissolved_solids",
                   [](In x) { return outcome(dissolved_solids({x[0]}, scale(x[1]))); }},
    NumberFunction{"conductivity_of_solids",
                   [](In x) { return outcome(conductivity_of_solids({x[0]}, scale(x[1]))); }},
    NumberFunction{
        "equivalents",
        [](In x) { return outcome(equivalents({x[0]}, static_cast<IonMix>(choice(x[1], 3)))); }},
    NumberFunction{"shown",
                   [](In x) {
                     return outcome(shown({x[0]}, {x[1], x[2] > 0, scale(x[3])}));
                   }},
    NumberFunction{"behind_zero",
                   [](In x) {
                     return outcome(behind_zero({x[0], x[1] > 0, scale(x[2])}));
                   }},
    NumberFunction{"carbonate_constants",
                   [](In x) { return outcome(carbonate_constants({x[0]})); }},
    NumberFunction{"ion_activity", [](In x) { return outcome(ion_activity(part(x[0]))); }},
    NumberFunction{"equivalents_of_alkalinity",
                   [](In x) { return outcome(equivalents_of_alkalinity({x[0]})); }},
    NumberFunction{"carbon_dioxide",
                   [](In x) {
                     return outcome(
                         carbon_dioxide({x[0]}, times(part(x[1]), 14), {x[2]}, part(x[3]) / 10));
                   }},
    NumberFunction{"permeate_ph",
                   [](In x) { return outcome(permeate_ph(times(part(x[0]), 14), part(x[1]))); }},
    NumberFunction{"air_equilibrium", [](In x) { return outcome(air_equilibrium({x[0]}, x[1])); }},
    NumberFunction{"resin_load", [](In x) { return outcome(resin_load({x[0]}, {x[1]}, {x[2]})); }},
    NumberFunction{
        "resin_run",
        [](In x) {
          return outcome(resin_run({{x[0]}, part(x[1]), part(x[2]), part(x[3])}, {{x[4]}, {x[5]}}));
        }},
    NumberFunction{"litres_left", [](In x) { return outcome(litres_left(x[0], x[1], {x[2]})); }},
    NumberFunction{"equivalents_per_litre",
                   [](In x) { return outcome(equivalents_per_litre(x[0])); }},
    NumberFunction{"breakthrough_at",
                   [](In x) { return outcome(breakthrough_at(curve(x), {x[2]})); }},
    NumberFunction{"litres_to", [](In x) { return outcome(litres_to(curve(x), part(x[2]))); }},
    NumberFunction{"litres_held", [](In x) { return outcome(litres_held(curve(x), {x[2]})); }},
    NumberFunction{
        "breakthrough_through",
        [](In x) {
          return outcome(breakthrough_through({{x[0]}, part(x[1])}, {{x[2]}, part(x[3])}));
        }},
    NumberFunction{"run_of",
                   [](In x) { return outcome(run_of(x[0], times(part(x[1]), 2), part(x[2]))); }},
    NumberFunction{
        "canisters_left",
        [](In x) { return outcome(canisters_left(times(x[0], 4), part(x[1]), part(x[2]))); }},
    NumberFunction{"fresh_lag_left",
                   [](In x) { return outcome(fresh_lag_left(times(x[0], 4), part(x[1]))); }},
    NumberFunction{"run_of_one", [](In x) { return outcome(run_of_one(x[0], part(x[1]))); }},
    NumberFunction{"run_of_two_together",
                   [](In x) { return outcome(run_of_two_together(x[0], part(x[1]))); }},
    NumberFunction{"rotation",
                   [](In x) {
                     return outcome(rotation(times(x[0], 4),
                                             static_cast<RotateWhen>(choice(x[1], 2)), part(x[2])));
                   }},
    NumberFunction{"hold_up_of", [](In x) { return outcome(hold_up_of({x[0]}, x[1])); }},
    NumberFunction{"time_constant_minutes",
                   [](In x) { return outcome(time_constant_minutes(start(x))); }},
    NumberFunction{"permeate_after", [](In x) { return outcome(permeate_after(start(x), x[4])); }},
    NumberFunction{"minutes_until_within",
                   [](In x) { return outcome(minutes_until_within(start(x), {x[4]})); }},
    NumberFunction{"start_up_cost", [](In x) { return outcome(start_up_cost(start(x))); }},
    NumberFunction{"cycle_load",
                   [](In x) { return outcome(cycle_load(x[0], {x[1]}, {x[2]}, x[3])); }},
    NumberFunction{"carbon_capacity_grams",
                   [](In x) { return outcome(carbon_capacity_grams(filter(x))); }},
    NumberFunction{"feed_of_product",
                   [](In x) { return outcome(feed_of_product({x[0]}, part(x[1]))); }},
    NumberFunction{"carbon_life",
                   [](In x) { return outcome(carbon_life(filter(x), {x[3]}, {part(x[4])})); }},
    NumberFunction{"carbon_left",
                   [](In x) {
                     return outcome(carbon_left(filter(x), {{x[3]},
                                                            {x[4]},
                                                            {part(x[5])},
                                                            x[6],
                                                            x[7],
                                                            MilligramsPerLitre{part(x[8])},
                                                            {part(x[9])}}));
                   }},
    NumberFunction{"drop_at_flow",
                   [](In x) {
                     return outcome(
                         drop_at_flow({part(x[0])}, {x[1]}, {x[2]}, times(part(x[3]), 2)));
                   }},
    NumberFunction{"clogging",
                   [](In x) {
                     return outcome(clogging({part(x[0])}, {x[1]}, {part(x[2])}, {x[3]},
                                             {{part(x[4])}, {part(x[5])}}));
                   }},
    NumberFunction{"sodium_adsorption_ratio",
                   [](In x) { return outcome(sodium_adsorption_ratio(ions(x))); }},
    NumberFunction{"calcium_in_soil_water",
                   [](In x) { return outcome(calcium_in_soil_water(x[0], {x[1]})); }},
    NumberFunction{"adjusted_sodium_adsorption_ratio",
                   [](In x) { return outcome(adjusted_sodium_adsorption_ratio(ions(x), {x[4]})); }},
    NumberFunction{"residual_sodium_carbonate",
                   [](In x) { return outcome(residual_sodium_carbonate(ions(x))); }},
    NumberFunction{"leaching_requirement",
                   [](In x) { return outcome(leaching_requirement({x[0]}, {x[1]})); }},
    NumberFunction{"restriction",
                   [](In x) {
                     return outcome(
                         restriction(static_cast<IrrigationItem>(choice(x[0], 9)), x[1]));
                   }},
    NumberFunction{"infiltration_restriction",
                   [](In x) { return outcome(infiltration_restriction(x[0], {x[1]})); }},
    NumberFunction{"irrigation_ph_is_normal",
                   [](In x) { return outcome(irrigation_ph_is_normal(x[0])); }},
    NumberFunction{"hardness_class", [](In x) { return outcome(hardness_class({x[0]})); }},
    NumberFunction{"grains_per_gallon", [](In x) { return outcome(grains_per_gallon({x[0]})); }},
    NumberFunction{
        "langelier",
        [](In x) {
          return outcome(langelier({{x[0]}, {x[1]}, {x[2]}, {x[3]}, times(part(x[4]), 14)}));
        }},
    NumberFunction{"concentrated",
                   [](In x) {
                     return outcome(concentrated(
                         {{x[0]}, {x[1]}, {x[2]}, {x[3]}, times(part(x[4]), 14)}, x[5]));
                   }},
    NumberFunction{"hours_to_fill",
                   [](In x) { return outcome(hours_to_fill({x[0]}, {x[1]}, {x[2]})); }},
    NumberFunction{"flood", [](In x) { return outcome(flood({x[0]}, x[1], x[2])); }},
    NumberFunction{"concentrate_flow",
                   [](In x) { return outcome(concentrate_flow({x[0]}, part(x[1]))); }},
};

}  // namespace

std::span<const NumberFunction> purifier_functions() { return all; }

}  // namespace tidewright::support
