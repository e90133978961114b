#include "core/water/ionic_conductance.hpp"

namespace tidewright::water {
namespace {

constexpr Range temperatures{"temperature", "°C", 0, 50};
constexpr Range extended{"temperature", "°C", 0, 100};

// By powers of (temperature - 25).
struct Cubic {
  double a;
  double b;
  double c;
  double d;
};

constexpr Cubic hydrogen{349.81, 4.8104, -1.0144e-2, -6.985e-5};
constexpr Cubic hydroxide{199.10, 3.3600, 3.416e-3, -5.846e-5};
constexpr Cubic sodium_chloride{126.45, 2.6293, 9.442e-3, -1.967e-5};
constexpr Cubic bicarbonate{44.5, 0.9345, 0, 0};

Answer<double> conductance(const Cubic& cubic, Celsius temperature) {
  if (const auto bad = outside(extended, temperature.value)) return *bad;
  const double t = temperature.value - 25;
  return {cubic.a + t * (cubic.b + t * (cubic.c + t * cubic.d)),
          outside(temperatures, temperature.value)};
}

}  // namespace

Answer<double> hydrogen_conductance(Celsius temperature) {
  return conductance(hydrogen, temperature);
}

Answer<double> hydroxide_conductance(Celsius temperature) {
  return conductance(hydroxide, temperature);
}

Answer<double> sodium_chloride_conductance(Celsius temperature) {
  return conductance(sodium_chloride, temperature);
}

Answer<double> bicarbonate_conductance(Celsius temperature) {
  return conductance(bicarbonate, temperature);
}

}  // namespace tidewright::water
