#include "core/water/dosing_uncertainty.hpp"

#include <array>
#include <optional>

#include "core/water/body.hpp"
#include "core/water/dosing.hpp"
#include "core/water/reference_salt.hpp"
#include "core/water/seawater.hpp"

namespace tidewright::water {
namespace {

constexpr Range possible{"standard uncertainty", "", 0, 100};

std::optional<Outside> unsound(const DosingUncertainty& by) {
  return first(outside(possible, by.volume_fraction), outside(possible, by.salt_fraction),
               outside(possible, by.water_fraction));
}

}  // namespace

Answer<Estimate> salinity_estimate(Litres finished, Celsius temperature, PracticalSalinity target,
                                   double water_fraction, const DosingUncertainty& by) {
  if (const auto found = unsound(by)) return *found;
  const auto batch = batch_of_finished(finished, temperature, target, water_fraction);
  if (!batch) return *batch.outside();
  const double kilograms = mass({finished, target, temperature})->value;
  const auto salinity = [&](const std::array<double, 3>& in) -> std::optional<double> {
    const double salt = batch->salt.value * in[1] * (1 - in[2]);
    return practical_salinity(GramsPerKilogram{1000 * salt / (kilograms * in[0])}).value;
  };
  const auto sure = standard_uncertainty<3>(
      salinity, {Estimate{1, by.volume_fraction}, Estimate{1, by.salt_fraction},
                 Estimate{water_fraction, by.water_fraction}});
  if (!sure) return Outside{possible, by.volume_fraction};
  return {Estimate{target.value, *sure}, batch.outside()};
}

}  // namespace tidewright::water
