#include "core/water/refraction.hpp"

namespace tidewright::water {
namespace {

constexpr Range salinity_made_for{"practical salinity", "", 0, 43};
constexpr Range salinity_possible{"practical salinity", "", 0, 70};
constexpr Range temperature_made_for{"temperature", "°C", 0, 30};
constexpr Range temperature_possible{"temperature", "°C", -2, 40};
constexpr Range salinity_quan_fry{"practical salinity", "", 0, 35};
constexpr Range wavelength_possible{"wavelength", "nm", 400, 700};

std::optional<Outside> impossible(PracticalSalinity salinity, Celsius temperature) {
  return first(outside(salinity_possible, salinity.value),
               outside(temperature_possible, temperature.value));
}

std::optional<Outside> extrapolated(PracticalSalinity salinity, Celsius temperature) {
  return first(outside(salinity_made_for, salinity.value),
               outside(temperature_made_for, temperature.value));
}

// Index = pure + salinity * per_salinity.
struct Line {
  double pure;
  double per_salinity;

  double at(double salinity) const { return pure + salinity * per_salinity; }
};

// Millard & Seaver's regions I and II. Wavelengths in micrometres, as in the paper.
Line millard_seaver(double t) {
  constexpr double l = 0.58926;
  constexpr double l2 = l * l;
  const double pure = 1.3280657 - 4.5536802e-3 * l2 + 2.5471707e-3 / l2 + 7.501966e-6 / (l2 * l2) +
                      2.802632e-6 / (l2 * l2 * l2) +
                      t * (-5.2883907e-6 + 1.0508621e-5 * l +
                           t * (-3.0738272e-6 + 2.1282248e-7 * l +
                                t * (3.0124687e-8 - 1.705881e-9 * l - t * 2.0883178e-10)));
  const double per_salinity =
      1.9029121e-4 + 2.4239607e-6 / l2 +
      t * (-7.3960297e-7 - 3.589495e-7 * l + t * (8.9818478e-9 + t * 1.2078804e-10));
  return {pure, per_salinity};
}

}  // namespace

Answer<double> refractive_index(PracticalSalinity salinity, Celsius temperature) {
  if (const auto why = impossible(salinity, temperature)) return *why;
  return {millard_seaver(temperature.value).at(salinity.value),
          extrapolated(salinity, temperature)};
}

Answer<PracticalSalinity> salinity_of_refraction(double index, Celsius temperature) {
  if (const auto why = outside(temperature_possible, temperature.value)) return *why;
  const Line line = millard_seaver(temperature.value);
  const Range possible{"refractive index", "", line.pure, line.at(salinity_possible.high)};
  if (const auto why = outside(possible, index)) return *why;
  const PracticalSalinity found{(index - line.pure) / line.per_salinity};
  return {found, extrapolated(found, temperature)};
}

Answer<double> refractive_index_quan_fry(PracticalSalinity salinity, Celsius temperature,
                                         double wavelength_nm) {
  if (const auto why =
          first(impossible(salinity, temperature), outside(wavelength_possible, wavelength_nm))) {
    return *why;
  }
  const double s = salinity.value;
  const double t = temperature.value;
  const double l = wavelength_nm;
  const double index = 1.31405 + (1.779e-4 - 1.05e-6 * t + 1.6e-8 * t * t) * s - 2.02e-6 * t * t +
                       (15.868 + 0.01155 * s - 0.00423 * t) / l - 4382 / (l * l) +
                       1.1455e6 / (l * l * l);
  return {index, first(outside(salinity_quan_fry, s), outside(temperature_made_for, t))};
}

}  // namespace tidewright::water
