// What the purifier's formulas do at the ends of what they are made for.
#include <gtest/gtest.h>

#include "core/report/outside.hpp"
#include "core/water/breakthrough.hpp"
#include "core/water/filling.hpp"
#include "core/water/irrigation.hpp"
#include "core/water/lead_lag.hpp"
#include "core/water/membrane.hpp"
#include "core/water/meter_display.hpp"
#include "core/water/osmosis.hpp"
#include "core/water/pure_water.hpp"
#include "core/water/resin.hpp"
#include "core/water/sodium_hazard.hpp"
#include "core/water/startup.hpp"

namespace tidewright::water {
namespace {

TEST(Rejection, OfAPermeateStrongerThanTheFeedIsMarked) {
  const auto answer = rejection(PartsPerMillion{100}, PartsPerMillion{150});
  EXPECT_DOUBLE_EQ(*answer, -0.5);
  EXPECT_FALSE(answer.in_range());
  EXPECT_EQ(report::words(*answer.outside()), "permeate 150 is outside 0 to 100");
}

TEST(Rejection, NeedsAFeed) { EXPECT_FALSE(rejection(PartsPerMillion{0}, PartsPerMillion{0})); }

TEST(Recovery, NeedsAFlow) { EXPECT_FALSE(recovery({0}, {0})); }

TEST(NetDrivingPressure, IsRefusedWhereNoWaterWouldPass) {
  const auto weak = net_driving_pressure({{0.5}, {0}, {0}, {1000}, 0.5, {25}});
  EXPECT_FALSE(weak);
  EXPECT_EQ(weak.outside()->range.name, "net driving pressure");
}

TEST(CompensatedPureWater, MarksAReadingBelowWhatPureWaterHas) {
  const auto low = compensated_pure_water({0.04}, {25});
  EXPECT_TRUE(low);
  EXPECT_FALSE(low.in_range());
  EXPECT_TRUE(compensated_pure_water({0.06}, {25}).in_range());
}

TEST(BehindZero, OfAPpmMeterIsAllThatItRoundsAway) {
  // By hand: below 1.0 uS/cm if it rounds, 2.0 if it cuts off; less 0.055 of the water, by 126.45
  // S cm2/mol and 58.443 g/mol: 0.44 and 0.90 mg/L of salt.
  const BehindZero rounded = *behind_zero({});
  EXPECT_DOUBLE_EQ(rounded.conductivity.value, 1);
  EXPECT_NEAR(rounded.sodium_chloride.value, 0.44, 0.005);
  EXPECT_NEAR(rounded.megohm_cm, 1, 1e-9);
  const BehindZero cut = *behind_zero({1, false, SolidsScale::sodium_chloride});
  EXPECT_DOUBLE_EQ(cut.conductivity.value, 2);
  EXPECT_NEAR(cut.sodium_chloride.value, 0.90, 0.005);
}

TEST(LitresLeft, AreNoneWhenTheBedIsSpent) {
  EXPECT_DOUBLE_EQ(litres_left(0.72, 0.8, {0.12})->value, 0);
  // (0.72 - 0.36) eq at 0.12 meq/L.
  EXPECT_NEAR(litres_left(0.72, 0.36, {0.12})->value, 3000, 1e-9);
}

TEST(BreakthroughThrough, RefusesAFallingOrFlatPair) {
  EXPECT_FALSE(breakthrough_through({{3000}, 0.05}, {{3600}, 0.05}));
  EXPECT_FALSE(breakthrough_through({{3000}, 0.05}, {{3600}, 0.01}));
  EXPECT_FALSE(breakthrough_through({{3600}, 0.01}, {{3000}, 0.05}));
}

TEST(Rotation, RefusesAFractionThatIsThereFromTheStart) {
  const auto soft = rotation(3, RotateWhen::lag_reaches, 0.001);
  EXPECT_FALSE(soft);
  EXPECT_EQ(soft.outside()->range.name, "fraction of the permeate");
}

TEST(CanistersLeft, AreFreshWhereNothingIsRead) {
  const CanistersLeft fresh = *canisters_left(10, 1e-9, 1e-12);
  EXPECT_DOUBLE_EQ(fresh.lead, 1);
  EXPECT_LT(fresh.lag, 1);
  EXPECT_FALSE(canisters_left(10, 0.2, 0.3));
  EXPECT_DOUBLE_EQ(canisters_left(10, 1, 1)->lead, 0);
}

TEST(FreshLagLeft, IsAllOrNothingAtTheEnds) {
  EXPECT_NEAR(*fresh_lag_left(10, 1e-9), 1, 1e-9);
  EXPECT_DOUBLE_EQ(*fresh_lag_left(300, 1), 0);
}

TEST(HoldUp, IsLearnedFromTheHalfWayTime) {
  // 12 L/h and a time constant of 1.25 min, of which ln 2 is half way: 0.25 L.
  EXPECT_NEAR(hold_up_of({12}, 1.25 * std::log(2.0))->value, 0.25, 1e-12);
  EXPECT_FALSE(hold_up_of({12}, 0));
  EXPECT_FALSE(hold_up_of({1e5}, 1e4));
}

TEST(StartUp, DecaysByItsTimeConstant) {
  // 0.25 L at 12 L/h: 1.25 min. After one, a factor of e.
  const StartUp run{{200}, {8}, {12}, {0.25}};
  EXPECT_NEAR(permeate_after(run, 1.25)->value, 8 + 192 / std::exp(1.0), 1e-9);
  EXPECT_DOUBLE_EQ(permeate_after(run, 0)->value, 200);
  EXPECT_DOUBLE_EQ(*minutes_until_within({{8}, {8}, {12}, {0.25}}, {1}), 0);
}

TEST(Leaching, IsRefusedWhereItWouldTakeAllWater) {
  EXPECT_FALSE(leaching_requirement({8}, {1.5}));
  EXPECT_FALSE(leaching_requirement({4}, {1.5}));
  EXPECT_TRUE(leaching_requirement({3}, {1.5}));
}

TEST(Infiltration, IsHinderedByVeryPureWater) {
  EXPECT_EQ(*infiltration_restriction(0.5, {0.05}), Restriction::severe);
}

TEST(Filling, OfAFullVatTakesNoTime) { EXPECT_DOUBLE_EQ(*hours_to_fill({500}, {480}, {10}), 0); }

}  // namespace
}  // namespace tidewright::water
