// What must hold of every mixture, whatever the waters: salt and water are neither made nor lost.
#include <cmath>

#include "core/water/blend.hpp"
#include "core/water/correction.hpp"
#include "core/water/dilution.hpp"
#include "core/water/dosing.hpp"
#include "core/water/evaporation.hpp"
#include "core/water/seawater.hpp"
#include "tests/support/between.hpp"

namespace tidewright::water {
namespace {

using support::between;

Body any_body(double salinity_low = 0) {
  return {{*between(1, 2000)}, {*between(salinity_low, 41)}, {*between(0, 38)}};
}

bool same(double one, double other, double relative = 1e-9) {
  return std::abs(one - other) <= relative * (std::abs(one) + std::abs(other) + 1e-12);
}

// What a correction does, done: the body afterwards, by mass.
Body carried_out(const Body& body, const Correction& steps, double water_fraction) {
  Body left = body;
  left.volume = body.volume - steps.drain;
  const Kilograms fresh{steps.fresh.value / 1000 * density_pure(body.temperature)->value};
  const Kilograms salt = *salt_mass(left) + steps.salt * (1 - water_fraction);
  const Kilograms all = *mass(left) + steps.salt + fresh;
  const PracticalSalinity salinity{35 * (salt / all) * (1000 / 35.16504)};
  return {
      {all.value / density(salinity, body.temperature)->value * 1000}, salinity, body.temperature};
}

RC_GTEST_PROP(Blend, KeepsWaterAndSalt, ()) {
  const Body one = any_body();
  const Body other = any_body();
  const auto both = blend(one, other);
  RC_ASSERT(static_cast<bool>(both));
  RC_ASSERT(same(mass(one)->value + mass(other)->value, mass(*both)->value));
  RC_ASSERT(same(salt_mass(one)->value + salt_mass(other)->value, salt_mass(*both)->value));
}

RC_GTEST_PROP(Blend, IsInBetween, ()) {
  const Body one = any_body();
  const Body other = any_body();
  const auto both = blend(one, other);
  RC_ASSERT(both->salinity >= std::min(one.salinity, other.salinity));
  RC_ASSERT(both->salinity <= std::max(one.salinity, other.salinity));
}

RC_GTEST_PROP(Dose, IsTheSaltOfTheBatch, ()) {
  const Litres fresh{*between(1, 2000)};
  const Celsius temperature{*between(0, 38)};
  const PracticalSalinity target{*between(0.1, 41)};
  const double water = *between(0, 0.3);
  const auto batch = batch_of_fresh(fresh, temperature, target, water);
  const Body made{batch->finished, target, temperature};
  RC_ASSERT(same(batch->salt.value * (1 - water), salt_mass(made)->value));
  RC_ASSERT(same(batch->salt.value + mass({fresh, {0}, temperature})->value, mass(made)->value));
  const auto other_way = batch_of_finished(batch->finished, temperature, target, water);
  RC_ASSERT(same(other_way->salt.value, batch->salt.value));
  RC_ASSERT(same(other_way->fresh.value, fresh.value));
  RC_ASSERT(same(salinity_of_batch(fresh, temperature, batch->salt, water)->value, target.value));
  RC_ASSERT(same(*salt_yield(fresh, temperature, batch->salt, target), 1 - water));
}

RC_GTEST_PROP(Dose, ThenCorrectIsTheTarget, ()) {
  const Litres fresh{*between(1, 2000)};
  const Celsius temperature{*between(0, 38)};
  const PracticalSalinity target{*between(1, 41)};
  const double believed = *between(0, 0.3);
  const double really = *between(0, 0.3);
  const auto batch = batch_of_fresh(fresh, temperature, target, believed);
  const auto came_to = salinity_of_batch(fresh, temperature, batch->salt, really);
  const Kilograms all = batch->salt + *mass({fresh, {0}, temperature});
  const Body body{
      {all.value / density(*came_to, temperature)->value * 1000}, *came_to, temperature};
  const auto steps = correction(body, target, really);
  RC_ASSERT(static_cast<bool>(steps));
  RC_ASSERT(same(carried_out(body, *steps, really).salinity.value, target.value));
}

RC_GTEST_PROP(Correction, ReachesTheTargetWithinTheVat, ()) {
  const Body body = any_body(1);
  const PracticalSalinity target{*between(1, 41)};
  const double water = *between(0, 0.3);
  const Litres vat = body.volume * *between(1, 1.2);
  const auto steps = correction(body, target, water, vat);
  RC_ASSERT(static_cast<bool>(steps));
  RC_ASSERT(steps->drain >= Litres{0});
  RC_ASSERT(steps->salt >= Kilograms{0});
  RC_ASSERT(steps->fresh >= Litres{0});
  const Body after = carried_out(body, *steps, water);
  RC_ASSERT(same(after.salinity.value, target.value));
  RC_ASSERT(same(after.volume.value, steps->finished.value));
  RC_ASSERT(steps->finished.value <= vat.value * (1 + 1e-12));
}

RC_GTEST_PROP(Evaporation, LeavesTheSalt, ()) {
  const Body body = any_body(0.1);
  const Litres gone = body.volume * *between(0.001, 0.5);
  const auto after = after_evaporation(body, gone);
  RC_ASSERT(same(salt_mass(body)->value, salt_mass(*after)->value));
  RC_ASSERT(same(evaporated_until(body, after->salinity)->value, gone.value));
  RC_ASSERT(same(after_top_up(body, gone, {0})->salinity.value, body.salinity.value));
}

RC_GTEST_PROP(Change, OfManyIsOneOfTheComposedFraction, ()) {
  const double fraction = *between(0.001, 0.9);
  const double incoming = *between(0, 100);
  const BatchChanges changes{*between(0, 100), incoming, fraction};
  const double times = *rc::gen::inRange(1, 20);
  const BatchChanges once{changes.now, incoming, *composed_fraction(fraction, times)};
  RC_ASSERT(same(*after_changes(changes, times), *after_changes(once, 1)));
  const BatchChanges then{*after_changes(changes, times), incoming, fraction, 3};
  const BatchChanges anew{*after_changes(then, 1), incoming, fraction, 3};
  RC_ASSERT(same(*after_changes(anew, 1), *after_changes(then, 2)));
}

RC_GTEST_PROP(Change, NeededIsTheInverseOfDone, ()) {
  const BatchChanges changes{*between(50, 100), *between(0, 10), *between(0.01, 0.5),
                             *between(0, 0.1)};
  const double times = *between(0.5, 8);
  RC_ASSERT(same(*changes_needed(changes, *after_changes(changes, times)), times, 1e-7));
  const ContinuousChange flow{changes.now, changes.incoming, changes.fraction, 0.01};
  RC_ASSERT(same(*days_needed(flow, *after_days(flow, times)), times, 1e-7));
}

RC_GTEST_PROP(Change, IsGentleUpToTheLimitOnly, ()) {
  const Body tank = any_body(20);
  const Body fresh = any_body();
  const ShockLimits limits{{*between(0.1, 3)}, {*between(0.1, 3)}};
  const auto most = gentle_exchange(tank, fresh, limits);
  RC_ASSERT(static_cast<bool>(most));
  const auto after = exchange(tank, *most, fresh);
  const double strain =
      std::max(std::abs((after->salinity - tank.salinity) / limits.salinity),
               std::abs((after->temperature - tank.temperature) / limits.temperature));
  RC_ASSERT(strain <= 1.001);
  RC_ASSERT(*most == tank.volume || strain >= 0.999);
}

}  // namespace
}  // namespace tidewright::water
