#include "core/water/body.hpp"

#include "core/water/reference_salt.hpp"
#include "core/water/seawater.hpp"

namespace tidewright::water {

Answer<Kilograms> mass(const Body& body) {
  if (const auto found = outside(body_volumes, body.volume.value)) return *found;
  const auto weight = density(body.salinity, body.temperature);
  if (!weight) return *weight.outside();
  return {Kilograms{body.volume.value / 1000 * weight->value}, weight.outside()};
}

Answer<Kilograms> salt_mass(const Body& body) {
  const auto all = mass(body);
  if (!all) return all;
  return {*all * (absolute_salinity(body.salinity).value / 1000), all.outside()};
}

}  // namespace tidewright::water
