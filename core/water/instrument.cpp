#include "core/water/instrument.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "core/water/brine_scale.hpp"
#include "core/water/practical_salinity.hpp"
#include "core/water/refraction.hpp"
#include "core/water/specific_gravity.hpp"

namespace tidewright::water {
namespace {

using Reads = Instrument::Reads;

// Newton's way, since the table is made when the program is built.
constexpr double square_root(double square) {
  double root = square > 1 ? square : 1;
  for (int step = 0; step < 60; ++step) root = (root + square / root) / 2;
  return root;
}

// Standard uncertainty of rectangular distributions of these half widths, together.
constexpr double limits(double one, double other = 0, double third = 0) {
  return square_root((one * one + other * other + third * third) / 3);
}

// An optical temperature compensation that is off by 2 degrees.
constexpr double compensation_left = 2 * 0.063;

constexpr std::array all{
    Instrument{"swing_arm",
               "plastic swing-arm hydrometer, never checked",
               Reads::specific_gravity,
               limits(0.002, 0.0005, 0.001),
               {0},
               {0}},
    Instrument{"swing_arm_checked",
               "plastic swing-arm hydrometer, checked at one point at the temperature of use",
               Reads::specific_gravity,
               limits(0.0007),
               {0},
               {limits(0.3)}},
    Instrument{"hydrometer",
               "glass hydrometer divided by 0.001, temperature known to 0.5 °C",
               Reads::specific_gravity,
               limits(0.001, 0.0003),
               {limits(0.5)},
               {0}},
    Instrument{"fine_hydrometer",
               "glass hydrometer divided by 0.0005, temperature known to 0.2 °C",
               Reads::specific_gravity,
               limits(0.0005, 0.0002),
               {limits(0.2)},
               {0}},
    Instrument{"brine_refractometer",
               "hand refractometer with a brine scale, zeroed on pure water, its slope corrected",
               Reads::brine_scale,
               limits(1),
               {0},
               {limits(compensation_left, 0.3)}},
    Instrument{"brine_refractometer_uncorrected",
               "hand refractometer with a brine scale, zeroed on pure water, read as salinity",
               Reads::practical_salinity,
               limits(1),
               {0},
               {limits(1.3, compensation_left)}},
    Instrument{"refractometer",
               "hand refractometer with a seawater scale, set with a fluid that is like 35",
               Reads::practical_salinity,
               limits(0.5),
               {0},
               {limits(0.3, compensation_left)}},
    Instrument{"index_refractometer",
               "digital refractometer that shows the index, to 0.0001",
               Reads::refractive_index,
               limits(0.0001),
               {limits(0.2)},
               {limits(0.2)}},
    Instrument{"probe",
               "conductivity probe, 1 % of its cell and 0.5 °C",
               Reads::conductivity,
               limits(0.01, 0.005),
               {limits(0.5)},
               {0}},
    Instrument{"calibrated_probe",
               "conductivity probe, calibrated near 53 mS/cm: 0.5 % and 0.1 °C",
               Reads::conductivity,
               limits(0.005, 0.0025),
               {limits(0.1)},
               {0}},
    Instrument{"salinometer",
               "laboratory salinometer with standard seawater",
               Reads::practical_salinity,
               0.002,
               {0},
               {0}},
};

Answer<PracticalSalinity> salinity(Reads reads, double reading, Celsius temperature,
                                   GravityScale scale) {
  switch (reads) {
    case Reads::conductivity:
      return practical_salinity(MillisiemensPerCm{reading}, temperature);
    case Reads::specific_gravity:
      return salinity_of_hydrometer(reading, temperature, scale);
    case Reads::refractive_index:
      return salinity_of_refraction(reading, temperature);
    case Reads::brine_scale:
      return salinity_of_brine_scale({reading});
    case Reads::practical_salinity:
      break;
  }
  if (const auto found = outside({"practical salinity", "", 0, 70}, reading)) return *found;
  return PracticalSalinity{reading};
}

}  // namespace

std::span<const Instrument> instruments() { return all; }

const Instrument* instrument_named(std::string_view name) {
  const auto at =
      std::find_if(all.begin(), all.end(), [&](const Instrument& one) { return one.name == name; });
  return at == all.end() ? nullptr : &*at;
}

Answer<Estimate> salinity_by(const Instrument& instrument, double reading, Celsius temperature,
                             GravityScale scale) {
  const Range possible{"standard uncertainty", "", 0, 100};
  const auto unsound =
      first(outside(possible, instrument.reading), outside(possible, instrument.temperature.value),
            outside(possible, instrument.salinity.value));
  if (unsound) return *unsound;
  const auto found = salinity(instrument.reads, reading, temperature, scale);
  if (!found) return *found.outside();
  const bool relative = instrument.reads == Reads::conductivity;
  const auto by = [&](const std::array<double, 3>& in) -> std::optional<double> {
    const auto one = salinity(instrument.reads, in[0], {in[1]}, scale);
    return one ? std::optional(one->value + in[2]) : std::nullopt;
  };
  const auto sure = standard_uncertainty<3>(
      by, {Estimate{reading, instrument.reading * (relative ? std::abs(reading) : 1)},
           Estimate{temperature.value, instrument.temperature.value},
           Estimate{0, instrument.salinity.value}});
  if (!sure) return Outside{possible, instrument.reading};
  return {Estimate{found->value, *sure}, found.outside()};
}

}  // namespace tidewright::water
