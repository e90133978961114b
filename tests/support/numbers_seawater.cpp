#include "core/water/brine_scale.hpp"
#include "core/water/conductivity_compensation.hpp"
#include "core/water/density_eos80.hpp"
#include "core/water/practical_salinity.hpp"
#include "core/water/refraction.hpp"
#include "core/water/seawater.hpp"
#include "core/water/solutes.hpp"
#include "core/water/specific_gravity.hpp"
#include "tests/support/numbers.hpp"

namespace tidewright::support {
namespace {

using namespace water;
using In = const Numbers&;

GravityScale scale(double number) { return static_cast<GravityScale>(choice(number, 8)); }

Compensation compensation(double law, double percent) {
  return {static_cast<Compensation::Law>(1 + choice(law, 2)), percent};
}

// Numbers close to where an answer is: a specific gravity, an index, a density, an enthalpy.
double near(double middle, double width, double number) {
  return std::abs(number) < 100 ? middle + width * number / 100 : number;
}

constexpr std::array all{
    NumberFunction{
        "practical_salinity",
        [](In x) { return outcome(practical_salinity(MillisiemensPerCm{x[0]}, Celsius{x[1]})); }},
    NumberFunction{"salinity_of_ratio",
                   [](In x) { return outcome(salinity_of_ratio(x[0] / 20, {x[1]})); }},
    NumberFunction{"conductivity", [](In x) { return outcome(conductivity({x[0]}, {x[1]})); }},
    NumberFunction{"density_teos10", [](In x) { return outcome(density_teos10({x[0]}, {x[1]})); }},
    NumberFunction{"density_pure", [](In x) { return outcome(density_pure({x[0]})); }},
    NumberFunction{"density", [](In x) { return outcome(density({x[0]}, {x[1]})); }},
    NumberFunction{"density_eos80", [](In x) { return outcome(density_eos80({x[0]}, {x[1]})); }},
    NumberFunction{
        "salinity_of_density",
        [](In x) { return outcome(salinity_of_density({near(1000, 100, x[0])}, {x[1]})); }},
    NumberFunction{"heat_capacity", [](In x) { return outcome(heat_capacity({x[0]}, {x[1]})); }},
    NumberFunction{"enthalpy", [](In x) { return outcome(enthalpy({x[0]}, {x[1]})); }},
    NumberFunction{"temperature_of_enthalpy",
                   [](In x) { return outcome(temperature_of_enthalpy({x[0]}, {x[1]})); }},
    NumberFunction{
        "temperature_of_enthalpy, close",
        [](In x) { return outcome(temperature_of_enthalpy({x[0]}, {near(0, 4e5, x[1])})); }},
    NumberFunction{"specific_gravity",
                   [](In x) { return outcome(specific_gravity({x[0]}, scale(x[1]))); }},
    NumberFunction{"salinity_of_gravity",
                   [](In x) { return outcome(salinity_of_gravity(x[0], scale(x[1]))); }},
    NumberFunction{
        "salinity_of_gravity, close",
        [](In x) { return outcome(salinity_of_gravity(near(1, 0.1, x[0]), scale(x[1]))); }},
    NumberFunction{"hydrometer_reading",
                   [](In x) { return outcome(hydrometer_reading({x[0]}, {x[1]}, scale(x[2]))); }},
    NumberFunction{"salinity_of_hydrometer, close",
                   [](In x) {
                     return outcome(
                         salinity_of_hydrometer(near(1, 0.1, x[0]), {x[1]}, scale(x[2])));
                   }},
    NumberFunction{"refractive_index",
                   [](In x) { return outcome(refractive_index({x[0]}, {x[1]})); }},
    NumberFunction{"salinity_of_refraction",
                   [](In x) { return outcome(salinity_of_refraction(x[0], {x[1]})); }},
    NumberFunction{
        "salinity_of_refraction, close",
        [](In x) { return outcome(salinity_of_refraction(near(1.33, 0.02, x[0]), {x[1]})); }},
    NumberFunction{"refractive_index_quan_fry",
                   [](In x) {
                     return outcome(
                         refractive_index_quan_fry({x[0]}, {x[1]}, near(550, 300, x[2])));
                   }},
    NumberFunction{"brine_index", [](In x) { return outcome(brine_index({x[0]})); }},
    NumberFunction{"brine_scale_reading",
                   [](In x) { return outcome(brine_scale_reading({x[0]})); }},
    NumberFunction{"salinity_of_brine_scale",
                   [](In x) { return outcome(salinity_of_brine_scale({x[0]})); }},
    NumberFunction{
        "factor_to_25",
        [](In x) { return outcome(factor_to_25(compensation(x[0], x[1] / 10), {x[2]})); }},
    NumberFunction{"seawater_factor_to_25",
                   [](In x) { return outcome(seawater_factor_to_25({x[0]}, {x[1]})); }},
    NumberFunction{"salinity_of_compensated",
                   [](In x) {
                     return outcome(
                         salinity_of_compensated({x[0]}, {x[1]}, compensation(x[2], x[3] / 10)));
                   }},
    NumberFunction{"salt_per_litre", [](In x) { return outcome(salt_per_litre({x[0]}, {x[1]})); }},
    NumberFunction{"solute_per_litre",
                   [](In x) {
                     return outcome(
                         solute_per_litre(solutes[choice(x[2], solutes.size())], {x[0]}, {x[1]}));
                   }},
    NumberFunction{"dissolved_solids_factor",
                   [](In x) { return outcome(dissolved_solids_factor({x[0]})); }},
};

}  // namespace

std::span<const NumberFunction> seawater_functions() { return all; }

}  // namespace tidewright::support
