// What people tell of the slow things, and how the vat's water ages, through the whole step.
#include <gtest/gtest.h>

#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using support::Stage;

double days(Duration age) { return hours(age) / 24; }

TEST(WaterAge, AVesselThatIsMixedHasTheMeanAgeOfWhatIsInIt) {
  // By arithmetic: 60 L of 3 days and 30 L of 0 days are 90 L of 2 days.
  Stage stage;
  stage.begin();
  stage.plug_obeys = false;
  stage.says(support::feedback, 0);
  stage.wait(3 * 24h);
  EXPECT_NEAR(days(stage.state.ledger.upkeep.water_age), 3, 1e-6);
  stage.says(support::feedback, 1);
  stage.says(support::level, 90);
  EXPECT_NEAR(days(stage.state.ledger.upkeep.water_age), 2, 1e-6);
  stage.says(support::level, 40);
  EXPECT_NEAR(days(stage.state.ledger.upkeep.water_age), 2, 1e-6) << "what is drawn is as old";
}

TEST(WaterAge, GoesOnWhileTheDaemonIsAway) {
  Stage stage;
  stage.begin();
  stage.now += 48h;
  stage.happen(Started{.clean = true, .away = 48h});
  EXPECT_NEAR(days(stage.state.ledger.upkeep.water_age), 2, 1e-6);
}

TEST(ResinCharge, IsBookedOnlyAfterAChangeWasTold) {
  Stage stage(support::full_room());
  stage.begin();
  stage.says(support::permeate, 10);
  stage.wait(2min);
  ASSERT_TRUE(stage.is_on());
  stage.says(support::level, 70);
  EXPECT_EQ(stage.state.ledger.resin.passed.value, 0);
  stage.happen(Tell{.kind = TellKind::rotated, .ticket = 1});
  stage.says(support::level, 80);
  // 10 ppm are 20 uS/cm (factor 0.5), so 0.2 meq/L (Standard Methods 1030); 5 mg/L of carbon
  // dioxide are 5 / 44.01 meq/L more for the anions.
  const state::ResinCharge& resin = stage.state.ledger.resin;
  EXPECT_NEAR(resin.passed.value, 10, 1e-9);
  EXPECT_NEAR(resin.cation_eq, 10 * 0.2 / 1000, 1e-6);
  EXPECT_NEAR(resin.anion_eq, 10 * (0.2 + 5 / 44.01) / 1000, 1e-6);
  stage.happen(Tell{.kind = TellKind::replaced, .ticket = 2});
  EXPECT_EQ(stage.state.ledger.resin.passed.value, 0);
}

TEST(ResinCharge, WithoutAReadingTheMeanGoesOn) {
  Stage stage(support::full_room());
  stage.begin();
  stage.says(support::permeate, 10);
  stage.wait(2min);
  stage.happen(Tell{.kind = TellKind::rotated, .ticket = 1});
  stage.says(support::level, 70);
  const double before = stage.state.ledger.resin.anion_eq;
  stage.happen(Refusal{support::permeate});
  stage.happen(Refusal{support::permeate});
  stage.happen(Refusal{support::permeate});
  ASSERT_NE(stage.signal(support::permeate).quality, Quality::good);
  stage.says(support::level, 80);
  EXPECT_NEAR(stage.state.ledger.resin.anion_eq, 2 * before, 1e-9);
}

TEST(Stocked, IsKeptAndRefusedWhereItCannotBe) {
  Stage stage(support::full_room());
  stage.begin();
  stage.happen(Tell{.kind = TellKind::stocked, .ticket = 1, .value = 20, .supply = 0});
  ASSERT_EQ(stage.answers.size(), 1u);
  EXPECT_TRUE(stage.answers[0].done);
  EXPECT_EQ(stage.state.ledger.stocks[0].amount, 20);
  EXPECT_EQ(stage.state.ledger.stocks[0].counted, stage.now);
  stage.happen(Tell{.kind = TellKind::stocked, .ticket = 1, .value = -1, .supply = 0});
  EXPECT_EQ(stage.answers[0].why.why, Why::value_out_of_range);
  stage.happen(Tell{.kind = TellKind::stocked, .ticket = 1, .value = 5, .supply = 7});
  EXPECT_EQ(stage.answers[0].why.why, Why::no_such_thing);
  EXPECT_EQ(stage.state.ledger.stocks[0].amount, 20);
}

TEST(Cleaned, IsKept) {
  Stage stage;
  stage.begin();
  stage.happen(Tell{.kind = TellKind::cleaned, .ticket = 1});
  EXPECT_TRUE(stage.answers[0].done);
  EXPECT_EQ(stage.state.ledger.upkeep.cleaned, stage.now);
}

}  // namespace
}  // namespace tidewright
