#include "core/water/dosing.hpp"

#include "core/water/body.hpp"
#include "core/water/reference_salt.hpp"
#include "core/water/seawater.hpp"

namespace tidewright::water {
namespace {

constexpr Range targets{"practical salinity", "", 0, 70};

// Kilograms of pure salt in a kilogram of solution.
double salt_fraction(PracticalSalinity salinity) {
  return absolute_salinity(salinity).value / 1000;
}

std::optional<Outside> unsound(Litres volume, PracticalSalinity target, double water_fraction) {
  return first(outside(body_volumes, volume.value), outside(targets, target.value),
               outside(water_fractions, water_fraction));
}

}  // namespace

Answer<Batch> batch_of_fresh(Litres fresh, Celsius temperature, PracticalSalinity target,
                             double water_fraction) {
  if (const auto found = unsound(fresh, target, water_fraction)) return *found;
  const auto water = mass({fresh, {0}, temperature});
  const auto weight = density(target, temperature);
  if (!water) return *water.outside();
  if (!weight) return *weight.outside();
  const double s = salt_fraction(target);
  const Kilograms salt = *water * (s / (1 - water_fraction - s));
  const Litres finished{(*water + salt).value / weight->value * 1000};
  return {Batch{fresh, salt, finished}, weight.outside()};
}

Answer<Batch> batch_of_finished(Litres finished, Celsius temperature, PracticalSalinity target,
                                double water_fraction) {
  if (const auto found = unsound(finished, target, water_fraction)) return *found;
  const auto all = mass({finished, target, temperature});
  const auto weight = density_pure(temperature);
  if (!all) return *all.outside();
  if (!weight) return *weight.outside();
  const Kilograms salt = *all * (salt_fraction(target) / (1 - water_fraction));
  const Litres fresh{(*all - salt).value / weight->value * 1000};
  return {Batch{fresh, salt, finished}, all.outside()};
}

Answer<PracticalSalinity> salinity_of_batch(Litres fresh, Celsius temperature, Kilograms salt,
                                            double water_fraction) {
  const auto water = mass({fresh, {0}, temperature});
  if (!water) return *water.outside();
  const auto found = first(outside(water_fractions, water_fraction),
                           outside({"salt", "kg", 0, fresh.value}, salt.value));
  if (found) return *found;
  const double s = salt.value * (1 - water_fraction) / (*water + salt).value;
  const PracticalSalinity made = practical_salinity(GramsPerKilogram{1000 * s});
  if (const auto high = outside(targets, made.value)) return *high;
  return {made, density(made, temperature).outside()};
}

Answer<double> salt_yield(Litres fresh, Celsius temperature, Kilograms salt,
                          PracticalSalinity came_to) {
  const auto water = mass({fresh, {0}, temperature});
  if (!water) return *water.outside();
  const auto found = first(outside(targets, came_to.value),
                           outside({"salt", "kg", 1e-6 * fresh.value, fresh.value}, salt.value));
  if (found) return *found;
  const double yield = salt_fraction(came_to) * ((*water + salt) / salt);
  return {yield, outside({"yield of the salt", "", 0.8, 1.02}, yield)};
}

}  // namespace tidewright::water
