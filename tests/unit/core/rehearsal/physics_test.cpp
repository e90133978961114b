#include <gtest/gtest.h>

#include "core/rehearsal/membrane.hpp"
#include "core/rehearsal/resin.hpp"
#include "core/rehearsal/weather.hpp"

namespace tidewright::rehearsal {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;

constexpr PartsPerMillion feed{320};

// International Critical Tables (1928/29), as reprinted in the Encyclopedia of Environmental
// Science and Engineering: 8 degrees 1.3872, 15 degrees 1.1447, 25 degrees 0.8949 cP.
TEST(Membrane, ViscosityAgreesWithThePublishedTable) {
  EXPECT_NEAR(viscosity(Celsius{8}), 1.3872, 0.015);
  EXPECT_NEAR(viscosity(Celsius{15}), 1.1447, 0.012);
  EXPECT_NEAR(viscosity(Celsius{25}), 0.8949, 0.009);
}

// The table's ratio 0.8949 / 1.3872 = 0.645.
TEST(Membrane, ColdWaterFlowsSlower) {
  const Membrane membrane{MembraneSettings{}};
  const double warm = membrane.flow(true, feed, Celsius{25}).value;
  EXPECT_NEAR(membrane.flow(true, feed, Celsius{8}).value / warm, 0.645, 0.01);
}

// Stopping the pump does not stop the water: half the pressure gives about half the flow.
TEST(Membrane, LinePressureAloneKeepsPushing) {
  const Membrane membrane{MembraneSettings{}};
  const double boosted = membrane.flow(true, feed, Celsius{15}).value;
  const double line = membrane.flow(false, feed, Celsius{15}).value;
  EXPECT_GT(line, 0.4 * boosted);
  EXPECT_LT(line, 0.5 * boosted);
}

// The first minutes after an idle membrane always read high (common practice).
TEST(Membrane, PermeateCreepsUpWhileIdleAndSettlesInRunning) {
  Membrane membrane{MembraneSettings{}};
  const LitresPerHour flow = membrane.flow(true, feed, Celsius{15});
  const double settled = membrane.permeate(flow, feed).value;
  membrane.live(hours{8}, LitresPerHour{0}, feed);
  EXPECT_GT(membrane.permeate(flow, feed).value, 5 * settled);
  membrane.live(minutes{10}, flow, feed);
  EXPECT_LT(membrane.permeate(flow, feed).value, 1.2 * settled);
}

// A membrane rated 98 % passes a fifth of what one rated 90 % passes.
TEST(Membrane, PassesWhatItsRejectionLeaves) {
  MembraneSettings good;
  good.rejection = 0.98;
  MembraneSettings poor;
  poor.rejection = 0.90;
  const double through_good = Membrane{good}.permeate(good.rated, feed).value;
  const double through_poor = Membrane{poor}.permeate(poor.rated, feed).value;
  EXPECT_NEAR(through_good, 6.4, 1e-9);  // 2 % of 320
  EXPECT_NEAR(through_poor / through_good, 5, 1e-9);
}

TEST(Canister, PassesNothingWhenFreshHalfWhenUsedUpAndAllInTheEnd) {
  Canister canister{1000};
  EXPECT_LT(canister.outlet(PartsPerMillion{10}).value, 0.01);
  while (canister.used() < 1) canister.take(Litres{0.1}, PartsPerMillion{10});
  EXPECT_NEAR(canister.outlet(PartsPerMillion{10}).value, 5, 0.1);
  canister.spend();
  EXPECT_GT(canister.outlet(PartsPerMillion{10}).value, 9.9);
}

TEST(Weather, IsWarmestInAugustAndInTheAfternoon) {
  const Weather weather{Celsius{12}, Celsius{6}, Celsius{1}};
  const Instant august{hours{24 * 227 + 16}};
  const Instant february{hours{24 * 44 + 4}};
  EXPECT_NEAR(temperature(weather, august).value, 19, 0.1);
  EXPECT_NEAR(temperature(weather, february).value, 5, 0.1);
}

}  // namespace
}  // namespace tidewright::rehearsal
