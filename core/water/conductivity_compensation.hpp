// What meters do to conductivity before they show it: they multiply it with a factor of temperature
// alone and call it that at 25 degrees. No such law is right for seawater, whose own factor depends
// on its salinity: at 20 degrees and 35 the usual 2 % law is 0.13 of salinity too high, ISO 7888's
// 0.30. Who knows the law can undo it.
#pragma once

#include <cstdint>

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

struct Compensation {
  enum class Law : std::uint8_t {
    none,      // the meter shows what it measured
    linear,    // 1 / (1 + coefficient (t - 25))
    iso_7888,  // of natural waters
  };
  Law law = Law::linear;
  double percent_per_celsius = 2.0;  // of the linear law; instruments' common default
};

// Standard Methods 2510 B: the slope of 0.01 mol/L potassium chloride.
inline constexpr Compensation standard_methods_2510{Compensation::Law::linear, 1.91};
inline constexpr Compensation iso_7888{Compensation::Law::iso_7888};

// Conductivity at 25 degrees = factor * conductivity at `temperature`, by a meter's law.
// ISO 7888:1985 (EN 27888), its table of 0 to 35 degrees as reproduced to 3 digits in a laboratory
// meter's manual, between its points a straight line: for natural waters of about 60 to 1000 uS/cm,
// right to 0.0005 of the table; refused outside. Linear: 0 to 50 degrees and 0 to 3.5 % per degree,
// refused outside; exact, since it is a law and not a fact.
Answer<double> factor_to_25(Compensation compensation, Celsius temperature);

// The true one of seawater, by the Practical Salinity Scale 1978: see practical_salinity.hpp.
// Refused below a salinity of 0.1.
Answer<double> seawater_factor_to_25(PracticalSalinity salinity, Celsius temperature);

// Practical salinity from what a meter shows for 25 degrees, by undoing its law: as good as from
// the raw conductivity, if the meter's temperature is the water's.
Answer<PracticalSalinity> salinity_of_compensated(MillisiemensPerCm shown, Celsius temperature,
                                                  Compensation compensation);

}  // namespace tidewright::water
