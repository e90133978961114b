#include "core/water/breakthrough.hpp"
#include "core/water/carbonate.hpp"
#include "core/water/dissolved_solids.hpp"
#include "core/water/lead_lag.hpp"
#include "core/water/membrane.hpp"
#include "core/water/membrane_series.hpp"
#include "core/water/normalisation.hpp"
#include "core/water/pure_water.hpp"
#include "core/water/resin.hpp"
#include "core/water/sodium_hazard.hpp"
#include "core/water/startup.hpp"
#include "tests/support/between.hpp"

namespace tidewright::water {
namespace {

using support::between;

void expect_equal(double one, double other) {
  RC_ASSERT(std::abs(one - other) <= 1e-9 * std::max(std::abs(one), std::abs(other)));
}

RC_GTEST_PROP(Membrane, LosesNoSaltAndNoWater, ()) {
  const double feed = *between(1, 5000);
  const double recovered = *between(0, 0.95);
  const double held = *between(0, 1);
  const double concentrate = feed * *concentration_factor(recovered, held);
  expect_equal(recovered * feed * (1 - held) + (1 - recovered) * concentrate, feed);
}

RC_GTEST_PROP(Membrane, LosesNoSaltAlongItself, ()) {
  const double recovered = *between(1e-6, 0.95);
  const AlongMembrane along = *along_membrane(*between(0, 1), recovered);
  expect_equal(recovered * along.permeate_over_feed + (1 - recovered) * along.concentrate_over_feed,
               1);
}

RC_GTEST_PROP(Membrane, HasTheLocalRejectionThatItsApparentOneSays, ()) {
  const double local = *between(0, 1);
  const double recovered = *between(0, 0.95);
  const double back =
      *local_rejection(along_membrane(local, recovered)->apparent_rejection, recovered);
  RC_ASSERT(std::abs(back - local) < 1e-9);
}

RC_GTEST_PROP(Membrane, ShowsLessRejectionWithMoreRecovery, ()) {
  const double local = *between(0.5, 0.999);
  const double less = *between(0, 0.9);
  const double more = *between(less + 0.01, 0.95);
  RC_ASSERT(along_membrane(local, more)->apparent_rejection <
            along_membrane(local, less)->apparent_rejection);
}

RC_GTEST_PROP(MembranesInSeries, LoseNoSaltAndNoWater, ()) {
  const double feed = *between(1, 5000);
  const double flow = *between(1, 500);
  const Membrane one{*between(0.01, 0.9), *between(0, 1)};
  const Membrane two{*between(0.01, 0.9), *between(0, 1)};
  const MembraneSeries series = *membranes_in_series({feed}, {flow}, one, two);
  const double permeate_flow = (series.permeate_first_flow + series.permeate_second_flow).value;
  expect_equal(permeate_flow + series.concentrate_flow.value, flow);
  expect_equal(permeate_flow * series.permeate.value +
                   series.concentrate_flow.value * series.concentrate.value,
               flow * feed);
}

// With equal recoveries the common permeate does not say which of two is worn.
RC_GTEST_PROP(MembranesInSeries, OfEqualRecoveryCanBeExchanged, ()) {
  const double recovered = *between(0.01, 0.9);
  const Membrane one{recovered, *between(0.5, 1)};
  const Membrane two{recovered, *between(0.5, 1)};
  expect_equal(1 + membranes_in_series({300}, {40}, one, two)->permeate.value,
               1 + membranes_in_series({300}, {40}, two, one)->permeate.value);
}

MembraneConditions some_conditions() {
  return {{*between(2, 10)},    {*between(0, 0.5)}, {*between(0, 0.5)},
          {*between(50, 1000)}, *between(0, 0.6),   {*between(2, 40)}};
}

RC_GTEST_PROP(FlowAt, IsUndoneByTheWayBack, ()) {
  const MembraneConditions here = some_conditions();
  const MembraneConditions there = some_conditions();
  const LitresPerHour flow{*between(1, 100)};
  expect_equal(flow_at(*flow_at(flow, here, there), there, here)->value, flow.value);
}

RC_GTEST_PROP(DissolvedSolids, AreUndoneByTheWayBack, ()) {
  const MicrosiemensPerCm conductivity{*between(0.001, 90000)};
  for (const SolidsScale scale :
       {SolidsScale::sodium_chloride, SolidsScale::irrigation, SolidsScale::natural_water}) {
    expect_equal(conductivity_of_solids(*dissolved_solids(conductivity, scale), scale)->value,
                 conductivity.value);
  }
}

RC_GTEST_PROP(CompensatedPureWater, GivesBackTheTraceOfSaltAtAnyTemperature, ()) {
  const MilligramsPerLitre salt{*between(0, 20)};
  const Celsius temperature{*between(0, 50)};
  const MicrosiemensPerCm raw = *trace_salt_conductivity(salt, temperature);
  expect_equal(compensated_pure_water(raw, temperature)->value,
               trace_salt_conductivity(salt, Celsius{25})->value);
}

RC_GTEST_PROP(PureWater, ConductsMoreWhenWarmer, ()) {
  const double colder = *between(0, 49);
  const double warmer = *between(colder + 0.01, 50);
  RC_ASSERT(pure_water_conductivity({warmer})->value > pure_water_conductivity({colder})->value);
}

RC_GTEST_PROP(CarbonDioxide, GrowsWithAlkalinityAndFallsWithPh, ()) {
  const double alkalinity = *between(1, 900);
  const double ph = *between(5, 8.2);
  const Celsius temperature{*between(0, 50)};
  const double here = carbon_dioxide({alkalinity}, ph, temperature)->value;
  RC_ASSERT(carbon_dioxide({alkalinity + 1}, ph, temperature)->value > here);
  RC_ASSERT(carbon_dioxide({alkalinity}, ph + 0.1, temperature)->value < here);
}

RC_GTEST_PROP(Resin, TreatsWhatItsCapacityHolds, ()) {
  const ResinBed bed{{*between(0.1, 10)}, *between(0.1, 1), *between(0.1, 1), *between(0.1, 1)};
  const ResinLoad load{{*between(0.01, 5)}, {*between(0.01, 5)}};
  const ResinRun run = *resin_run(bed, load);
  const double held = run.by_anion.value * load.anion.value / 1000;
  expect_equal(held, bed.resin.value * bed.anion_eq_per_litre * bed.utilisation);
  expect_equal(litres_left(held, 0, load.anion)->value, run.by_anion.value);
  RC_ASSERT(run.litres <= run.by_anion && run.litres <= run.by_cation);
}

RC_GTEST_PROP(Breakthrough, IsFoundAgainFromTwoReadings, ()) {
  const double half = *between(100, 10000);
  const Breakthrough curve{{half}, {half * *between(0.02, 0.2)}};
  const double first_fraction = *between(0.005, 0.5);
  const double second_fraction = *between(first_fraction + 0.05, 0.95);
  const Litres first_litres = *litres_to(curve, first_fraction);
  RC_PRE(first_litres.value > 0);
  const Breakthrough found = *breakthrough_through(
      {first_litres, first_fraction}, {*litres_to(curve, second_fraction), second_fraction});
  expect_equal(found.half.value, curve.half.value);
  RC_ASSERT(std::abs(found.spread / curve.spread - 1) < 1e-8);
}

// What the bed has held and what it has let through is what went in.
RC_GTEST_PROP(Breakthrough, LosesNothing, ()) {
  const double half = *between(100, 10000);
  const Breakthrough curve{{half}, {half * *between(0.05, 0.3)}};
  const double passed = *between(10, 2 * half);
  const int steps = 2000;
  double let_through = 0;
  for (int i = 0; i < steps; ++i) {
    let_through += *breakthrough_at(curve, {(i + 0.5) * passed / steps}) * passed / steps;
  }
  RC_ASSERT(std::abs(litres_held(curve, {passed})->value + let_through - passed) < 1e-5 * passed);
}

// In a steady rotation each canister leaves as full as the litres of one turn, less what passed.
RC_GTEST_PROP(Rotation, HoldsNoMoreThanComesIn, ()) {
  const double sharpness = *between(5, 50);
  const Rotation turn = *rotation(sharpness, RotateWhen::lead_reaches, *between(0.2, 0.9));
  RC_ASSERT(turn.utilisation <= turn.litres_over_half + 1e-12);
  RC_ASSERT(turn.utilisation <= 1);
  RC_ASSERT(turn.behind_lag < turn.behind_lead);
  RC_ASSERT(turn.litres_over_half > *run_of_one(sharpness, 0.01));
}

RC_GTEST_PROP(StartUp, ReachesItsMarginWhenItSays, ()) {
  const StartUp run{{*between(50, 500)}, {*between(1, 20)}, {*between(2, 50)}, {*between(0.05, 1)}};
  const MilligramsPerLitre margin{*between(0.1, 10)};
  const double minutes = *minutes_until_within(run, margin);
  expect_equal(permeate_after(run, minutes)->value, (run.steady + margin).value);
}

// Concentrating by a factor multiplies the adsorption ratio by its root.
RC_GTEST_PROP(SodiumAdsorptionRatio, GrowsByTheRootOfTheConcentration, ()) {
  const IrrigationIons ions{{*between(0.1, 10)}, {*between(0.1, 10)}, {*between(0.1, 10)}, {1}};
  const double factor = *between(1, 10);
  const IrrigationIons stronger{
      ions.sodium * factor, ions.calcium * factor, ions.magnesium * factor, {1}};
  expect_equal(*sodium_adsorption_ratio(stronger),
               *sodium_adsorption_ratio(ions) * std::sqrt(factor));
}

}  // namespace
}  // namespace tidewright::water
