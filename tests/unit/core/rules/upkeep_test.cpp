// The rules of the slow things: membrane, resin, feed, warmth, the vat's water, the stock. Limits
// are our own choice unless a source stands by.
#include <gtest/gtest.h>

#include "core/ledger/feed.hpp"
#include "core/picture/resin.hpp"
#include "core/picture/stock.hpp"
#include "tests/unit/core/rules/bench.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using room::RuleId;
using rules::Verdict;

// Nine samples of the same permeate, half a litre and five minutes apart, of a feed of 300 ppm.
struct Membrane : RuleBench {
  explicit Membrane(float permeate_ppm) {
    picture.working = picture.commanded = true;
    state.signals[support::feed].value = 300;
    fill(permeate_ppm);
  }
  void fill(float ppm) {
    state::Samples& samples = state.ledger.permeate;
    samples.count = static_cast<std::uint8_t>(samples.items.size());
    for (std::size_t i = 0; i < samples.items.size(); ++i) {
      samples.items[i] = {picture.now - 5min * static_cast<int>(i), ppm,
                          100 - 0.5F * static_cast<float>(i)};
    }
  }
  Verdict verdict() const { return RuleBench::verdict(RuleId::membrane_rejection_low); }
};

TEST(MembraneRejection, IsLowUnderNineTenths) {
  // 1 - 31 / 300 = 89.7 %, 1 - 29 / 300 = 90.3 %.
  EXPECT_EQ(Membrane(31).verdict(), Verdict::on);
  EXPECT_EQ(Membrane(29).verdict(), Verdict::off);
}

TEST(MembraneRejection, EndsAPercentagePointHigher) {
  Membrane bench(28);
  bench.state.findings[RuleId::membrane_rejection_low].active = true;
  EXPECT_EQ(bench.verdict(), Verdict::on) << "90.7 %";
  bench.fill(26);
  EXPECT_EQ(bench.verdict(), Verdict::off) << "91.3 %";
}

TEST(MembraneRejection, OneGoodSampleOfNineIsDoubt) {
  Membrane bench(60);
  bench.state.ledger.permeate.items[8].ppm = 10;
  EXPECT_EQ(bench.verdict(), Verdict::unknown);
}

TEST(MembraneRejection, TooFewSamplesAreDoubt) {
  Membrane bench(60);
  bench.state.ledger.permeate.count = 8;
  EXPECT_EQ(bench.verdict(), Verdict::unknown);
}

TEST(MembraneRejection, IsNotJudgedAtRestNorOnOldReadingsNorWithoutAFeedReading) {
  Membrane resting(60);
  resting.picture.working = false;
  EXPECT_EQ(resting.verdict(), Verdict::unknown);
  Membrane old(60);
  old.picture.now += 61min;
  EXPECT_EQ(old.verdict(), Verdict::unknown);
  Membrane lost(60);
  lost.state.signals[support::feed].quality = Quality::uncertain;
  EXPECT_EQ(lost.verdict(), Verdict::unknown);
  Membrane in_air(2);
  in_air.state.signals[support::feed].value = 3;  // the probe hangs in the air
  EXPECT_EQ(in_air.verdict(), Verdict::unknown);
}

TEST(MembraneRejection, IsNotJudgedAtATrickle) {
  Membrane bench(60);
  bench.state.ledger.level.rate = bench.picture.flow_lowest * 0.9;
  EXPECT_EQ(bench.verdict(), Verdict::unknown);
  bench.state.ledger.level.rate = bench.picture.flow_lowest * 1.1;
  EXPECT_EQ(bench.verdict(), Verdict::on);
}

TEST(Warmth, IsBelievedAtAnyQualityButBadAndEndsHalfADegreeWithin) {
  RuleBench bench;
  state::Signal& signal = bench.state.signals[support::warmth];
  signal.value = 3.9;
  signal.quality = Quality::uncertain;
  EXPECT_EQ(bench.verdict(RuleId::frost), Verdict::on);
  EXPECT_EQ(bench.judge(RuleId::frost).why.subject, support::warmth);
  bench.state.findings[RuleId::frost].active = true;
  signal.value = 4.4;
  EXPECT_EQ(bench.verdict(RuleId::frost), Verdict::on);
  signal.value = 4.6;
  EXPECT_EQ(bench.verdict(RuleId::frost), Verdict::unknown) << "only a good one ends it";
  signal.quality = Quality::good;
  EXPECT_EQ(bench.verdict(RuleId::frost), Verdict::off);
  signal.value = 35.1;
  EXPECT_EQ(bench.verdict(RuleId::room_hot), Verdict::on);
  signal.quality = Quality::bad;
  EXPECT_EQ(bench.verdict(RuleId::room_hot), Verdict::unknown);
}

// 1.5 L of resin at 0.6 eq/L, of which 80 % are had: 0.72 eq of anions.
TEST(ResinForecast, IsWhatIsLeftAtTheMeanLoadAndPace) {
  RuleBench bench;
  bench.state.ledger.resin_changed = bench.picture.now - 10 * 24h;
  bench.state.ledger.resin = {Litres{1000}, 0.2, 0.36};
  const auto forecast = picture::resin_forecast(bench.room, bench.state.ledger, bench.picture.now);
  ASSERT_TRUE(forecast.has_value());
  EXPECT_NEAR(forecast->left.value, 1000, 1e-9);  // the same again
  EXPECT_NEAR(forecast->used, 0.5, 1e-12);
  ASSERT_TRUE(forecast->days.has_value());
  EXPECT_NEAR(*forecast->days, 10, 1e-9);
  EXPECT_EQ(bench.verdict(RuleId::resin_near_end), Verdict::on) << "10 of 14 days";
  EXPECT_EQ(bench.judge(RuleId::resin_near_end).why.why, Why::resin_ends_soon);
  bench.room.purifier->resin_told_before = 9 * 24h;
  EXPECT_EQ(bench.verdict(RuleId::resin_near_end), Verdict::off);
}

TEST(ResinForecast, ThePaceOfTheFirstDaysSaysNothing) {
  RuleBench bench;
  bench.state.ledger.resin_changed = bench.picture.now - 2 * 24h;
  bench.state.ledger.resin = {Litres{100}, 0.01, 0.66};
  const auto forecast = picture::resin_forecast(bench.room, bench.state.ledger, bench.picture.now);
  ASSERT_TRUE(forecast.has_value());
  EXPECT_FALSE(forecast->days.has_value());
  EXPECT_EQ(bench.judge(RuleId::resin_near_end).why.why, Why::resin_nearly_used) << "0.66 of 0.72";
}

TEST(ResinForecast, NeedsItsSizeAndSomeWater) {
  RuleBench bench;
  bench.state.ledger.resin = {Litres{9}, 0.1, 0.1};
  EXPECT_FALSE(picture::resin_forecast(bench.room, bench.state.ledger, bench.picture.now));
  bench.state.ledger.resin = {Litres{90}, 0.1, 0.1};
  bench.room.purifier->lead_resin.reset();
  EXPECT_FALSE(picture::resin_forecast(bench.room, bench.state.ledger, bench.picture.now));
}

struct Feed {
  state::FeedLevel level;
  Instant now{std::chrono::hours{1000}};
  void read(double ppm, Duration lasting) {
    for (Duration passed{0}; passed < lasting; passed += 5min) {
      now += 5min;
      ledger::follow_feed(PartsPerMillion{ppm}, now, level);
    }
  }
};

TEST(FeedLevel, ASpikeMovesNothingAndAChangeIsLatelyFirst) {
  Feed feed;
  feed.read(300, 48h);
  feed.read(4000, 5min);
  EXPECT_NEAR(feed.level.usual.value, 300, 1);
  EXPECT_LT(feed.level.lately.value, 315) << "one reading counts as 450, for 5 min of an hour";
  feed.read(500, 3h);
  EXPECT_GT(feed.level.lately.value, 0.9 * 500);
  EXPECT_LT(feed.level.usual.value, 320);
}

TEST(FeedLevel, WhatLastsBecomesUsual) {
  Feed feed;
  feed.read(300, 8 * 24h);
  feed.read(600, 30 * 24h);
  EXPECT_NEAR(feed.level.usual.value, 600, 30);
}

TEST(FeedChanged, NeedsADayOfRunningAndTellsBothWays) {
  RuleBench bench;
  bench.state.ledger.feed = {{300}, {400}, 24h, bench.picture.now};
  EXPECT_EQ(bench.verdict(RuleId::feed_changed), Verdict::on);
  bench.state.ledger.feed.lately = {380};
  EXPECT_EQ(bench.verdict(RuleId::feed_changed), Verdict::off) << "27 %";
  bench.state.findings[RuleId::feed_changed].active = true;
  EXPECT_EQ(bench.verdict(RuleId::feed_changed), Verdict::on) << "until 20 %";
  bench.state.findings[RuleId::feed_changed].active = false;
  bench.state.ledger.feed.lately = {200};
  EXPECT_EQ(bench.verdict(RuleId::feed_changed), Verdict::on);
  bench.state.ledger.feed.learned = 23h;
  EXPECT_EQ(bench.verdict(RuleId::feed_changed), Verdict::off);
}

TEST(FeedChanged, AStepOfTheMeterInVerySoftWaterIsNone) {
  RuleBench bench;
  bench.state.ledger.feed = {{8}, {12}, 100h, bench.picture.now};
  EXPECT_EQ(bench.verdict(RuleId::feed_changed), Verdict::off);
}

TEST(Stock, FallsByTheDayAndByTheLitre) {
  // 20 kg, 3 kg in 30 days and 1 kg for 1000 L: after 10 days and 500 L, 20 - 1 - 0.5 = 18.5 kg.
  RuleBench bench;
  bench.state.ledger.made = Litres{700};
  bench.state.ledger.stocks[0] = {bench.picture.now - 10 * 24h, 20, Litres{200}};
  const auto stock = picture::stock_now(bench.room, bench.state.ledger, 0, bench.picture.now);
  ASSERT_TRUE(stock.has_value());
  EXPECT_NEAR(stock->amount, 18.5, 1e-12);
  EXPECT_NEAR(stock->per_day.value_or(0), 0.15, 1e-12);
  EXPECT_NEAR(picture::days_to_order(bench.room.supplies[0], *stock).value_or(0), 8.5 / 0.15, 1e-9);
  EXPECT_EQ(bench.verdict(RuleId::stock_low), Verdict::off);
  bench.state.ledger.stocks[0].amount = 11;
  EXPECT_EQ(bench.verdict(RuleId::stock_low), Verdict::on) << "9.5 of 10 kg";
  bench.state.ledger.stocks[0] = {};
  EXPECT_EQ(bench.verdict(RuleId::stock_low), Verdict::off) << "nobody has counted it";
}

TEST(VatCleaning, IsCountedFromTheFirstDayUntilSomebodyTells) {
  RuleBench bench;
  bench.picture.now = Instant{1000 * 24h};
  bench.state.ledger.upkeep.began = bench.picture.now - 179 * 24h;
  EXPECT_EQ(bench.verdict(RuleId::vat_cleaning_due), Verdict::off);
  EXPECT_EQ(bench.judge(RuleId::vat_cleaning_due).judge_again, bench.picture.now + 24h);
  bench.picture.now += 24h;
  EXPECT_EQ(bench.verdict(RuleId::vat_cleaning_due), Verdict::on);
  bench.state.ledger.upkeep.cleaned = bench.picture.now - 1h;
  EXPECT_EQ(bench.verdict(RuleId::vat_cleaning_due), Verdict::off);
}

}  // namespace
}  // namespace tidewright
