#include "core/water/blend.hpp"

#include <algorithm>
#include <cmath>

#include "core/water/reference_salt.hpp"
#include "core/water/seawater.hpp"
#include "core/water/solve.hpp"

namespace tidewright::water {
namespace {

Answer<JoulesPerKilogram> heat(const Body& body) {
  return enthalpy(absolute_salinity(body.salinity), body.temperature);
}

struct Share {
  double of_one;
  double of_other;
  double of(double one, double other) const { return of_one * one + of_other * other; }
};

}  // namespace

Answer<Body> blend(const Body& one, const Body& other) {
  const auto mass_one = mass(one);
  const auto mass_other = mass(other);
  if (!mass_one) return *mass_one.outside();
  if (!mass_other) return *mass_other.outside();
  const auto heat_one = heat(one);
  const auto heat_other = heat(other);
  if (!heat_one) return *heat_one.outside();
  if (!heat_other) return *heat_other.outside();

  const Kilograms all = *mass_one + *mass_other;
  const Share share{*mass_one / all, *mass_other / all};
  const PracticalSalinity salinity{share.of(one.salinity.value, other.salinity.value)};
  const auto temperature = temperature_of_enthalpy(absolute_salinity(salinity),
                                                   {share.of(heat_one->value, heat_other->value)});
  if (!temperature) return *temperature.outside();
  const auto weight = density(salinity, *temperature);
  if (!weight) return *weight.outside();
  const auto remark = mass_one.outside() ? mass_one.outside() : mass_other.outside();
  return {Body{{all.value / weight->value * 1000}, salinity, *temperature}, remark};
}

Answer<Body> exchange(const Body& body, Litres taken, const Body& other) {
  if (const auto found =
          first(outside(body_volumes, body.volume.value),
                outside({"exchanged volume", "L", 0, body.volume.value}, taken.value))) {
    return *found;
  }
  if (taken.value < body_volumes.low) {
    const auto weighed = mass(body);
    if (!weighed) return *weighed.outside();
    return {body, weighed.outside()};
  }
  const Body poured{taken, other.salinity, other.temperature};
  const Body kept{body.volume - taken, body.salinity, body.temperature};
  if (kept.volume.value < body_volumes.low) {
    const auto weighed = mass(poured);
    if (!weighed) return *weighed.outside();
    return {poured, weighed.outside()};
  }
  return blend(kept, poured);
}

Answer<Litres> gentle_exchange(const Body& body, const Body& other, const ShockLimits& limits) {
  if (const auto found =
          first(outside({"limit of salinity", "", 0.001, 70}, limits.salinity.value),
                outside({"limit of temperature", "°C", 0.001, 60}, limits.temperature.value))) {
    return *found;
  }
  const auto all = exchange(body, body.volume, other);
  const auto none = exchange(body, {0}, other);
  if (!all) return *all.outside();
  if (!none) return *none.outside();
  const auto strain = [&](double litres) {
    const auto after = exchange(body, {litres}, other);
    if (!after) return 0.0;
    return std::max(std::abs((after->salinity - body.salinity) / limits.salinity),
                    std::abs((after->temperature - body.temperature) / limits.temperature));
  };
  if (strain(body.volume.value) <= 1) return {body.volume, all.outside()};
  const Bracket litres{0, body.volume.value};
  const auto most = solve(strain, 1, litres, 1e-6 * body.volume.value);
  return {Litres{most.value_or(0)}, all.outside()};
}

}  // namespace tidewright::water
