#include "core/water/seawater.hpp"

#include <array>
#include <cmath>
#include <cstddef>

#include "core/water/reference_salt.hpp"
#include "core/water/solve.hpp"

namespace tidewright::water {
namespace {

constexpr Range salinity_made_for{"salinity", "g/kg", 0, 42};
constexpr Range salinity_possible{"salinity", "g/kg", 0, 120};
constexpr Range practical_salinity_possible{"practical salinity", "", 0, 115};
constexpr Range temperature_made_for{"temperature", "°C", -6, 40};
constexpr Range temperature_possible{"temperature", "°C", -6, 60};

constexpr double kelvin_at_zero_celsius = 273.15;
constexpr double temperature_unit_celsius = 40;
constexpr double salinity_unit_g_kg = 40 * grams_per_practical_salinity;
constexpr double pressure_unit_pascal = 1e8;

// The Gibbs function is a sum of rows of powers of y = temperature / 40 degrees, lowest first; each
// row stands at a power of x = sqrt(salinity / 40.188617 g/kg). Its tables in the source name the
// powers i of x, j of y and k of the pressure.
// J/kg at zero pressure, k = 0:
constexpr std::array water_energy{0.101342743139674e3,  0.590578347909402e1,  -0.123577859330390e5,
                                  0.736741204151612e3,  -0.148185936433658e3, 0.580259125842571e2,
                                  -0.189843846514172e2, 0.305081646487967e1};
constexpr std::array salt_energy_logarithm{5812.81456626732, 851.226734946706};
constexpr std::array salt_energy_2{1416.27648484197,  168.072408311545, 880.031352997204,
                                   -225.267649263401, 91.4260447751259, -21.6603240875311,
                                   2.13016970847183};
constexpr std::array salt_energy_3{-2432.14662381794, -493.407510141682, -43.0664675978042,
                                   -10.0227370861875, 0.875600661808945};
constexpr std::array salt_energy_4{2025.80115603697, 543.835333000098,  -68.5572509204491,
                                   49.3667694856254, -17.1397577419788, 2.49697009569508};
constexpr std::array salt_energy_5{-1091.66841042967, -196.028306689776};
constexpr std::array salt_energy_6{374.601237877840, 36.7571622995805};
constexpr std::array salt_energy_7{-48.5891069025409};
// Its slope with pressure, k = 1, which is volume:
constexpr std::array water_volume{0.100015695367145e6,  -0.270983805184062e3, 0.145503645404680e4,
                                  -0.672507783145070e3, 0.397968445406972e3,  -0.194618310617595e3,
                                  0.635113936641785e2,  -0.963108119393062e1};
constexpr std::array salt_volume_2{-3310.49154044839, 729.116529735046, -860.764303783977,
                                   694.244814133268, -297.728741987187};
constexpr std::array salt_volume_3{199.459603073901, -175.292041186547, 383.058066002476,
                                   -460.319931801257, 234.565187611355};
constexpr std::array salt_volume_4{-54.7919133532887, -22.6683558512829};
constexpr std::array salt_volume_5{36.0284195611086};

// The sum of a row, and its first and second derivatives with respect to y.
struct Sum {
  double value = 0;
  double slope = 0;
  double bend = 0;

  friend Sum operator+(Sum a, Sum b) {
    return {a.value + b.value, a.slope + b.slope, a.bend + b.bend};
  }
  friend Sum operator*(double factor, Sum a) {
    return {factor * a.value, factor * a.slope, factor * a.bend};
  }
};

template <std::size_t Size>
Sum sum(const std::array<double, Size>& row, double y) {
  Sum sum;
  for (std::size_t j = Size; j-- > 0;) {
    sum.bend = sum.bend * y + 2 * sum.slope;
    sum.slope = sum.slope * y + sum.value;
    sum.value = sum.value * y + row[j];
  }
  return sum;
}

Sum gibbs_energy(double salinity_g_kg, double celsius) {
  const double y = celsius / temperature_unit_celsius;
  const double x2 = salinity_g_kg / salinity_unit_g_kg;
  const Sum water = sum(water_energy, y);
  if (x2 == 0) return water;
  const double x = std::sqrt(x2);
  const Sum higher = sum(salt_energy_4, y) + x * sum(salt_energy_5, y) +
                     x2 * sum(salt_energy_6, y) + x2 * x * sum(salt_energy_7, y);
  return water + x2 * (std::log(x) * sum(salt_energy_logarithm, y) + sum(salt_energy_2, y) +
                       x * sum(salt_energy_3, y) + x2 * higher);
}

double density_kg_m3(double salinity_g_kg, double celsius) {
  const double y = celsius / temperature_unit_celsius;
  const double x2 = salinity_g_kg / salinity_unit_g_kg;
  const double x = std::sqrt(x2);
  const double volume = sum(water_volume, y).value +
                        x2 * (sum(salt_volume_2, y).value + x * sum(salt_volume_3, y).value +
                              x2 * (sum(salt_volume_4, y).value + x * salt_volume_5[0]));
  return pressure_unit_pascal / volume;
}

double enthalpy_j_kg(double salinity_g_kg, double celsius) {
  const Sum gibbs = gibbs_energy(salinity_g_kg, celsius);
  const double kelvin = kelvin_at_zero_celsius + celsius;
  return gibbs.value - kelvin * gibbs.slope / temperature_unit_celsius;
}

std::optional<Outside> impossible(GramsPerKilogram salinity, Celsius temperature) {
  return first(outside(salinity_possible, salinity.value),
               outside(temperature_possible, temperature.value));
}

std::optional<Outside> extrapolated(GramsPerKilogram salinity, Celsius temperature) {
  return first(outside(salinity_made_for, salinity.value),
               outside(temperature_made_for, temperature.value));
}

}  // namespace

Answer<KilogramsPerCubicMetre> density_teos10(GramsPerKilogram salinity, Celsius temperature) {
  if (const auto why = impossible(salinity, temperature)) return *why;
  return {{density_kg_m3(salinity.value, temperature.value)}, extrapolated(salinity, temperature)};
}

Answer<KilogramsPerCubicMetre> density_pure(Celsius temperature) {
  return density_teos10({0}, temperature);
}

Answer<KilogramsPerCubicMetre> density(PracticalSalinity salinity, Celsius temperature) {
  if (const auto why = outside(practical_salinity_possible, salinity.value)) return *why;
  return density_teos10(absolute_salinity(salinity), temperature);
}

Answer<GramsPerKilogram> salinity_of_density(KilogramsPerCubicMetre density, Celsius temperature) {
  if (const auto why = outside(temperature_possible, temperature.value)) return *why;
  const auto density_at = [&](double g_kg) { return density_kg_m3(g_kg, temperature.value); };
  const Bracket all{salinity_possible.low, salinity_possible.high};
  const auto found = solve(density_at, density.value, all, 1e-9);
  if (!found) {
    return Outside{{"density", "kg/m3", density_at(all.low), density_at(all.high)}, density.value};
  }
  return {{*found}, extrapolated({*found}, temperature)};
}

Answer<JoulesPerKilogramKelvin> heat_capacity(GramsPerKilogram salinity, Celsius temperature) {
  if (const auto why = impossible(salinity, temperature)) return *why;
  const Sum gibbs = gibbs_energy(salinity.value, temperature.value);
  const double kelvin = kelvin_at_zero_celsius + temperature.value;
  return {{-kelvin * gibbs.bend / (temperature_unit_celsius * temperature_unit_celsius)},
          extrapolated(salinity, temperature)};
}

Answer<JoulesPerKilogram> enthalpy(GramsPerKilogram salinity, Celsius temperature) {
  if (const auto why = impossible(salinity, temperature)) return *why;
  return {{enthalpy_j_kg(salinity.value, temperature.value)}, extrapolated(salinity, temperature)};
}

Answer<Celsius> temperature_of_enthalpy(GramsPerKilogram salinity, JoulesPerKilogram enthalpy) {
  if (const auto why = outside(salinity_possible, salinity.value)) return *why;
  const auto enthalpy_at = [&](double celsius) { return enthalpy_j_kg(salinity.value, celsius); };
  const Bracket all{temperature_possible.low, temperature_possible.high};
  const auto found = solve(enthalpy_at, enthalpy.value, all, 1e-9);
  if (!found) {
    return Outside{{"enthalpy", "J/kg", enthalpy_at(all.low), enthalpy_at(all.high)},
                   enthalpy.value};
  }
  return {{*found}, extrapolated(salinity, {*found})};
}

}  // namespace tidewright::water
