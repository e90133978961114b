// The keys of the slow alarms become the room's figures.
#include <gtest/gtest.h>

#include <algorithm>

#include "config/protection.hpp"
#include "config/reader/reader.hpp"

namespace tidewright::config {
namespace {

using namespace std::chrono_literals;

constexpr const char* home = R"(
room = "r"
[vat.pure]
volume = "200 L"
level = { topic = "level", unit = "%", reports_every = "60 s" }
clean_every = "90 days"
water_age_longest = "21 days"
[purifier]
fills = "pure"
driven_by = "b"
rated = "240 L/day"
water_stops_with = "valve"
permeate_tds = { topic = "permeate", unit = "ppm", reports_every = "5 min" }
hot_above = "95 °F"
rejection_low = "85 %"
feed_change = "50 %"
resin = "1.4 L"
carbon_dioxide_ppm = 12
resin_told_before = "21 days"
[actuator.b]
command = "b/set"
lease_kept_by = "nobody"
[supply.salt]
words = "sea salt"
unit = "kg"
order_below = 10
used_in_30_days = 4.5
used_per_1000_l = 0.25
[supply.floss]
unit = "m"
order_below = 2
)";

struct Upkeep : testing::Test {
  Upkeep() : understood(read(home)) {
    for (const Problem& problem : understood.problems) ADD_FAILURE() << problem.what;
  }
  const room::Room& room() const { return understood.household->room; }
  Understood understood;
};

TEST_F(Upkeep, KeysAreReadInTheirOwnUnits) {
  ASSERT_TRUE(understood.household.has_value());
  const room::Purifier& purifier = *room().purifier;
  EXPECT_NEAR(purifier.hot_above.value, 35, 1e-9);  // 95 °F
  EXPECT_NEAR(purifier.rejection_low, 0.85, 1e-12);
  EXPECT_NEAR(purifier.feed_change, 0.5, 1e-12);
  ASSERT_TRUE(purifier.lead_resin.has_value());
  EXPECT_NEAR(purifier.lead_resin->value, 1.4, 1e-12);
  EXPECT_EQ(purifier.carbon_dioxide.value, 12);
  EXPECT_EQ(purifier.resin_told_before, Duration{21 * 24h});
  EXPECT_EQ(room().vat->clean_every, Duration{90 * 24h});
  EXPECT_EQ(room().vat->water_age_longest, Duration{21 * 24h});
}

TEST_F(Upkeep, SuppliesAreCalledByTheirNameWhereNoOtherIsGiven) {
  ASSERT_TRUE(understood.household.has_value());
  ASSERT_EQ(room().supplies.size(), 2u);
  // The file's order is not kept: sections are read by name.
  const bool salt_first = room().supplies[0].id == "salt";
  const room::Supply& salt = room().supplies[salt_first ? 0 : 1];
  const room::Supply& floss = room().supplies[salt_first ? 1 : 0];
  EXPECT_EQ(salt.words, "sea salt");
  EXPECT_EQ(salt.unit, "kg");
  EXPECT_EQ(salt.order_below, 10);
  EXPECT_EQ(salt.used_in_30_days, 4.5);
  EXPECT_EQ(salt.used_per_1000_litres, 0.25);
  EXPECT_EQ(floss.words, "floss");
  EXPECT_EQ(floss.used_in_30_days, 0);
}

TEST_F(Upkeep, CheckSaysWhatIsToldInTimeAndWhatIsNot) {
  ASSERT_TRUE(understood.household.has_value());
  const auto tells = [](const std::vector<Case>& cases, std::string_view happening) {
    return std::any_of(cases.begin(), cases.end(),
                       [&](const Case& one) { return one.happening == happening; });
  };
  const Protection all = protection(*understood.household);
  EXPECT_TRUE(tells(all.had, "the resin nears its end"));
  EXPECT_FALSE(tells(all.not_had, "the vat needs cleaning"));
  Household bare = *understood.household;
  bare.room.purifier->lead_resin.reset();
  bare.room.vat->clean_every.reset();
  bare.room.supplies.clear();
  const Protection less = protection(bare);
  EXPECT_TRUE(tells(less.not_had, "the resin nears its end"));
  EXPECT_TRUE(tells(less.not_had, "the vat needs cleaning"));
  EXPECT_TRUE(tells(less.not_had, "salt, resin or cartridges run out"));
}

}  // namespace
}  // namespace tidewright::config
