#include "core/water/membrane.hpp"

#include <algorithm>
#include <cmath>

namespace tidewright::water {

double temperature_factor(Celsius temperature) {
  const double t = std::clamp(temperature.value, 1.0, 45.0);
  const double activation_kelvin = t >= 25.0 ? 2640.0 : 3020.0;
  return std::exp(activation_kelvin * (1.0 / 298.0 - 1.0 / (273.0 + t)));
}

}  // namespace tidewright::water
