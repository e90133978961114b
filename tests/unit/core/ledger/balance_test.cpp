// The parts of the water balance, each by itself.
#include <gtest/gtest.h>

#include <cmath>

#include "core/ledger/draws.hpp"
#include "core/ledger/leak.hpp"
#include "core/ledger/stretch.hpp"
#include "tests/support/rooms.hpp"

namespace tidewright::ledger {
namespace {

using namespace std::chrono_literals;

constexpr Instant noon{24h * 20'000 + 12h};

struct DrawsTest : testing::Test {
  void draw(double litres) {
    now += 2h;
    fall(litres, now);
  }
  void fall(double litres, Instant at) {
    post_draws({.risen = Litres{0}, .fallen = Litres{litres}}, {}, at, vat, draws);
  }
  room::Vat vat = *support::minimal_room().vat;  // 200 L
  state::Draws draws;
  Instant now = noon;
};

TEST_F(DrawsTest, FallsWithinHalfAnHourAreOneDraw) {
  draw(5);
  fall(7, now + 29min);
  EXPECT_EQ(draws.litres, Litres{12});
  EXPECT_EQ(draws.last - draws.began, 29min);
  fall(1, now + 59min);
  EXPECT_EQ(draws.litres, Litres{1}) << "half an hour later another begins";
}

TEST_F(DrawsTest, ARiseIsNoDraw) {
  draw(5);
  post_draws({.risen = Litres{50}, .fallen = Litres{0}}, {}, now + 1h, vat, draws);
  EXPECT_EQ(draws.litres, Litres{5});
}

// The weekly water change must not be called unusual for the daily top-offs in between.
TEST_F(DrawsTest, AWeeklyChangeIsRememberedThroughTheDailyTopOffs) {
  for (int week = 0; week < 4; ++week) {
    draw(40);
    for (int day = 0; day < 7; ++day) draw(12);
  }
  EXPECT_GT(draw_usual(vat, draws), Litres{40});
  EXPECT_LT(draw_usual(vat, draws), Litres{100}) << "half a vat is still not usual";
}

TEST_F(DrawsTest, AMishapTeachesLittle) {
  for (int i = 0; i < 4; ++i) draw(12);
  const Litres before = draw_usual(vat, draws);
  draw(190);
  draw(1);
  EXPECT_GT(Litres{190}, 2 * before);
  EXPECT_LT(draw_usual(vat, draws), Litres{190});
}

// 0.2 an hour for two weeks; a week is what it remembers.
TEST_F(DrawsTest, HowOftenIsLearnedAndForgotten) {
  for (int times = 0; times < 70; ++times) {
    now += 3h;
    draw(2);
  }
  EXPECT_NEAR(draws_an_hour(draws, now), 0.2, 0.04);
  EXPECT_NEAR(draws_an_hour(draws, now + 7 * 24h), 0.2 / 2.718, 0.02);
}

// A tank's top-off that the gauge tells by the litre, as long as the habit says so.
TEST_F(DrawsTest, WhatFallsByHabitIsNotDrawnByHand) {
  for (int times = 0; times < 70; ++times) {
    now += 3h;
    post_draws({.risen = Litres{0}, .fallen = Litres{1}}, LitresPerHour{0.33}, now, vat, draws);
  }
  EXPECT_LT(draws_an_hour(draws, now), 0.01);
}

// A gauge that says `level` for `lasting`, carried on in pieces of `piece`.
state::Stretch stood(double level, Duration lasting, Duration piece) {
  room::Instrument gauge = support::minimal_room().instruments[support::level];
  gauge.step = 0.5;
  state::Stretch stretch;
  stretch.standing = true;
  stretch.held = Litres{level};
  for (Duration lived{0}; lived < lasting; lived += piece) post_stretch(gauge, piece, stretch);
  return stretch;
}

// However the events fall, the slices are of equal time: 10 min each.
TEST(Stretch, SlicesAreOfEqualTimeHoweverEventsCome) {
  for (const Duration piece : {Duration{7s}, Duration{60s}, Duration{59'900}, Duration{25min}}) {
    const state::Stretch stretch = stood(120, 100min, piece);
    EXPECT_EQ(stretch.count, 10) << piece.count();
    for (std::size_t i = 0; i < stretch.count; ++i) EXPECT_FLOAT_EQ(stretch.levels[i], 120);
  }
}

TEST(Stretch, KeepsTheNewestEightHours) {
  EXPECT_EQ(stood(120, 24h, 1min).count, state::slices_max);
}

TEST(Stretch, ASliceOfASlowGaugeHoldsTwoReadings) {
  room::Instrument gauge = support::minimal_room().instruments[support::level];
  gauge.reports_every = 15min;
  EXPECT_EQ(slice_of(gauge, true), 30min);
}

// A balance whose household takes nothing, and then stands with a level that falls by `l_h`.
struct LeakTest : testing::Test {
  LeakTest() {
    balance.habit.learned = 3;
    balance.stretch.standing = true;
  }
  void stand(double l_h, Duration lasting) {
    for (Duration lived{0}; lived < lasting; lived += 10min) {
      now += 10min;
      level -= l_h / 6;
      state::Stretch& stretch = balance.stretch;
      if (stretch.count == stretch.levels.size()) {
        std::shift_left(stretch.levels.begin(), stretch.levels.end(), 1);
        --stretch.count;
      }
      stretch.levels[stretch.count++] = static_cast<float>(level);
      post_leak(room, {.deviation = Litres{0.16}}, 10min, now, balance);
    }
  }
  room::Room room = support::minimal_room();
  state::Balance balance;
  Instant now = noon;
  double level = 170;
};

TEST_F(LeakTest, IsFoundWithItsRateAndLitres) {
  stand(0, 8h);
  EXPECT_FALSE(balance.leak.found);
  stand(2, 6h);
  ASSERT_TRUE(balance.leak.found);
  EXPECT_NEAR(balance.leak.rate.value, 2, 0.1);
  EXPECT_NEAR(balance.leak.litres.value, 12, 3);  // 2 L/h for six hours
}

TEST_F(LeakTest, IsOverWhenTheLevelStands) {
  stand(2, 6h);
  EXPECT_TRUE(balance.leak.found);
  stand(0, 3h);
  EXPECT_FALSE(balance.leak.found);
}

// Four draws in three hours fall like a leak; where somebody often draws, it takes five to be sure.
TEST_F(LeakTest, NeedsLongerWhereSomebodyOftenDrawsByHand) {
  balance.draws.an_hour = 0.2;
  balance.draws.began = now;
  stand(2, 5h);
  EXPECT_FALSE(balance.leak.found);
  stand(2, 1h);
  EXPECT_TRUE(balance.leak.found);
}

TEST_F(LeakTest, DriftIsNone) {
  stand(drift_allowed.value, 48h);
  EXPECT_FALSE(balance.leak.found);
}

TEST_F(LeakTest, AHabitIsLearnedAndIsNone) {
  stand(0.4, 72h);
  EXPECT_NEAR(balance.habit.usual.value, 0.4, 0.1);  // three times nothing are remembered too
  EXPECT_FALSE(balance.leak.found);
}

TEST_F(LeakTest, NeverBecomesAHabit) {
  stand(0, 48h);
  stand(3, 24h);
  EXPECT_TRUE(balance.leak.found);
  EXPECT_NEAR(balance.habit.usual.value, 0, 0.3);
}

TEST_F(LeakTest, BeforeTheHabitIsKnownOnlyALargeOneIsFound) {
  balance.habit.learned = 0;
  stand(1.5, 8h);
  EXPECT_FALSE(balance.leak.found);
  stand(3, 8h);
  EXPECT_TRUE(balance.leak.found);
}

}  // namespace
}  // namespace tidewright::ledger
