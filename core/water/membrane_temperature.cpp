#include "core/water/membrane_temperature.hpp"

#include <algorithm>
#include <limits>

namespace tidewright::water {
namespace {

constexpr Range temperatures{"temperature", "°C", 1, 45};
constexpr Range numbers{"temperature", "°C", std::numeric_limits<double>::lowest(),
                        std::numeric_limits<double>::max()};
constexpr Range coefficients{"temperature coefficient", "K", 0, 10000};
constexpr Range zeros{"0 °C", "K", 273, 273.15};

}  // namespace

Answer<double> temperature_factor(Celsius temperature, const MembraneTemperatureLaw& law) {
  if (const auto bad = first(
          outside(numbers, temperature.value), outside(coefficients, law.kelvin_above_25),
          outside(coefficients, law.kelvin_below_25), outside(zeros, law.zero_celsius_in_kelvin))) {
    return *bad;
  }
  const double t = std::clamp(temperature.value, temperatures.low, temperatures.high);
  const double kelvin = t >= 25 ? law.kelvin_above_25 : law.kelvin_below_25;
  const double zero = law.zero_celsius_in_kelvin;
  return {std::exp(kelvin * (1 / (zero + 25) - 1 / (zero + t))),
          outside(temperatures, temperature.value)};
}

}  // namespace tidewright::water
