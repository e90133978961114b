#include "core/water/mixture_uncertainty.hpp"

#include <array>
#include <optional>

#include "core/water/blend.hpp"
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

Answer<Estimate> dose_estimate(Litres fresh, Celsius temperature, PracticalSalinity target,
                               double water_fraction, const DosingUncertainty& by) {
  if (const auto found = unsound(by)) return *found;
  const auto batch = batch_of_fresh(fresh, temperature, target, water_fraction);
  if (!batch) return *batch.outside();
  const auto salt = [&](const std::array<double, 3>& in) -> std::optional<double> {
    const auto one = batch_of_fresh({in[0]}, temperature, target, in[2]);
    return one ? std::optional(one->salt.value * in[1]) : std::nullopt;
  };
  const auto sure = standard_uncertainty<3>(
      salt, {Estimate{fresh.value, by.volume_fraction * fresh.value}, Estimate{1, by.salt_fraction},
             Estimate{water_fraction, by.water_fraction}});
  if (!sure) return Outside{possible, by.volume_fraction};
  return {Estimate{batch->salt.value, *sure}, batch.outside()};
}

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

Answer<BlendEstimate> blend_estimate(const Body& one, const Body& other,
                                     const BlendUncertainty& by) {
  const auto found =
      first(outside(possible, by.volume_fraction), outside(possible, by.salinity.value),
            outside(possible, by.temperature.value));
  if (found) return *found;
  const auto both = blend(one, other);
  if (!both) return *both.outside();
  using Inputs = std::array<double, 6>;
  const auto blended = [](const Inputs& in) {
    return blend({{in[0]}, {in[1]}, {in[2]}}, {{in[3]}, {in[4]}, {in[5]}});
  };
  const auto salinity = [&](const Inputs& in) -> std::optional<double> {
    const auto body = blended(in);
    return body ? std::optional(body->salinity.value) : std::nullopt;
  };
  const auto temperature = [&](const Inputs& in) -> std::optional<double> {
    const auto body = blended(in);
    return body ? std::optional(body->temperature.value) : std::nullopt;
  };
  const auto volume = [&](Litres litres) {
    return Estimate{litres.value, litres.value * by.volume_fraction};
  };
  const std::array<Estimate, 6> inputs{volume(one.volume),
                                       Estimate{one.salinity.value, by.salinity.value},
                                       Estimate{one.temperature.value, by.temperature.value},
                                       volume(other.volume),
                                       Estimate{other.salinity.value, by.salinity.value},
                                       Estimate{other.temperature.value, by.temperature.value}};
  const auto salinity_sure = standard_uncertainty<6>(salinity, inputs);
  const auto temperature_sure = standard_uncertainty<6>(temperature, inputs);
  if (!salinity_sure || !temperature_sure) return Outside{possible, by.volume_fraction};
  return {BlendEstimate{*both, {*salinity_sure}, {*temperature_sure}}, both.outside()};
}

}  // namespace tidewright::water
