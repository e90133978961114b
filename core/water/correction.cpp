#include "core/water/correction.hpp"

#include <algorithm>

#include "core/water/reference_salt.hpp"
#include "core/water/seawater.hpp"

namespace tidewright::water {
namespace {

constexpr Range salinities{"practical salinity", "", 0, 70};

// What both directions need: fractions of salt by mass, kilograms per litre.
struct Balance {
  Litres volume;
  double now;
  double wanted;
  double kilograms_per_litre_now;
  double kilograms_per_litre_wanted;
  double kilograms_per_litre_fresh;

  Kilograms mass() const { return {volume.value * kilograms_per_litre_now}; }
};

Correction strengthen(const Balance& batch, double dry_fraction, std::optional<Litres> vat) {
  const Kilograms salt =
      batch.mass() * ((batch.wanted - batch.now) / (dry_fraction - batch.wanted));
  const Litres finished{(batch.mass() + salt).value / batch.kilograms_per_litre_wanted};
  if (!vat || finished <= *vat) return {{0}, salt, {0}, finished};
  // At the brim: salt + (volume - drain) = vat, by mass.
  const Kilograms full{vat->value * batch.kilograms_per_litre_wanted};
  const Kilograms less_salt = full * ((batch.wanted - batch.now) / (dry_fraction - batch.now));
  const Litres kept{(full - less_salt).value / batch.kilograms_per_litre_now};
  return {batch.volume - kept, less_salt, {0}, *vat};
}

Correction weaken(const Balance& batch, std::optional<Litres> vat) {
  const Kilograms fresh = batch.mass() * (batch.now / batch.wanted - 1);
  const Litres finished{(batch.mass() + fresh).value / batch.kilograms_per_litre_wanted};
  if (!vat || finished <= *vat) {
    return {{0}, {0}, {fresh.value / batch.kilograms_per_litre_fresh}, finished};
  }
  const Kilograms refilled{batch.volume.value * batch.kilograms_per_litre_wanted};
  const Kilograms kept = refilled * (batch.wanted / batch.now);
  return {batch.volume - Litres{kept.value / batch.kilograms_per_litre_now},
          {0},
          {(refilled - kept).value / batch.kilograms_per_litre_fresh},
          batch.volume};
}

}  // namespace

Answer<Correction> correction(const Body& body, PracticalSalinity target, double water_fraction,
                              std::optional<Litres> vat) {
  const double largest = vat ? vat->value : body_volumes.high;
  // No amount of fresh water makes it nothing.
  const double weakest = body.salinity.value > 0 ? std::max(body.salinity.value / 1000, 1e-9) : 0;
  const Range targets{"wanted practical salinity", "", weakest, 70};
  const auto found = first(outside(salinities, body.salinity.value), outside(targets, target.value),
                           outside(water_fractions, water_fraction), outside(body_volumes, largest),
                           outside({"volume", "L", body_volumes.low, largest}, body.volume.value));
  if (found) return *found;
  const auto now = density(body.salinity, body.temperature);
  const auto wanted = density(target, body.temperature);
  if (!now) return *now.outside();
  if (!wanted) return *wanted.outside();
  const Balance batch{body.volume,
                      absolute_salinity(body.salinity).value / 1000,
                      absolute_salinity(target).value / 1000,
                      now->value / 1000,
                      wanted->value / 1000,
                      density_pure(body.temperature)->value / 1000};
  const Correction answer = target > body.salinity   ? strengthen(batch, 1 - water_fraction, vat)
                            : target < body.salinity ? weaken(batch, vat)
                                                     : Correction{{0}, {0}, {0}, body.volume};
  if (const auto much = outside(body_volumes, answer.finished.value)) return *much;
  return {answer, now.outside() ? now.outside() : wanted.outside()};
}

}  // namespace tidewright::water
