#include "core/water/evaporation.hpp"

#include "core/water/seawater.hpp"
#include "core/water/solve.hpp"

namespace tidewright::water {
namespace {

constexpr PracticalSalinity strongest{115};
constexpr Range salinities{"practical salinity", "", 0, strongest.value};

Litres volume(Kilograms mass, KilogramsPerCubicMetre density) {
  return {mass.value / density.value * 1000};
}

Kilograms pure_water(Litres amount, Celsius temperature) {
  return {amount.value / 1000 * density_pure(temperature)->value};
}

}  // namespace

Answer<Body> after_evaporation(const Body& body, Litres evaporated) {
  const auto before = mass(body);
  if (!before) return *before.outside();
  const Range amounts{"evaporated volume", "L", 0, 0.9 * body.volume.value};
  if (const auto found = outside(amounts, evaporated.value)) return *found;
  const Kilograms left = *before - pure_water(evaporated, body.temperature);
  const PracticalSalinity salinity = body.salinity * (*before / left);
  if (const auto found = outside(salinities, salinity.value)) return *found;
  const auto weight = density(salinity, body.temperature);
  if (!weight) return *weight.outside();
  return {Body{volume(left, *weight), salinity, body.temperature}, weight.outside()};
}

Answer<Body> after_top_up(const Body& body, Litres evaporated, PracticalSalinity top_up) {
  const auto before = mass(body);
  if (!before) return *before.outside();
  const Range amounts{"evaporated volume", "L", 0, 1000 * body.volume.value};
  if (const auto found = first(outside(amounts, evaporated.value),
                               outside({"salinity of the top-up", "", 0, 70}, top_up.value))) {
    return *found;
  }
  // Salt is kept: S m + S_in (m_end - m + m_evaporated) = S_end m_end, m_end at the old volume.
  const Kilograms lost = pure_water(evaporated, body.temperature);
  const double brought = (body.salinity * before->value - top_up * (*before - lost).value).value;
  const auto surplus = [&](double salinity) {
    const auto end = mass({body.volume, {salinity}, body.temperature});
    return (salinity - top_up.value) * end->value;
  };
  const auto salinity = solve(surplus, brought, {0, strongest.value}, 1e-12);
  if (!salinity) {
    const double rise = brought / before->value;
    return Outside{salinities, top_up.value + rise};
  }
  return {Body{body.volume, {*salinity}, body.temperature},
          density({*salinity}, body.temperature).outside()};
}

Answer<Litres> evaporated_until(const Body& body, PracticalSalinity salinity) {
  const auto before = mass(body);
  if (!before) return *before.outside();
  const Range risen{"practical salinity now", "", body.salinity.value, 9 * body.salinity.value};
  if (const auto found = first(
          outside({"practical salinity before", "", 0.01, strongest.value}, body.salinity.value),
          outside(risen, salinity.value), outside(salinities, salinity.value))) {
    return *found;
  }
  const Kilograms lost = *before * (1 - body.salinity / salinity);
  return {volume(lost, *density_pure(body.temperature)),
          density(salinity, body.temperature).outside()};
}

}  // namespace tidewright::water
