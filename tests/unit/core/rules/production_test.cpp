// The rules that watch the making of water. Limits are our own choice unless a source stands by.
#include <gtest/gtest.h>

#include "tests/unit/core/rules/bench.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using room::RuleId;
using rules::Verdict;

struct Filling : RuleBench {
  Filling() {
    picture.commanded = picture.working = true;
    state.drives[0].on = true;
    state.ledger.fill.under_way = true;
    state.ledger.fill.to_go = Litres{80};
  }
  state::Fill& fill = state.ledger.fill;
};

TEST(LevelLost, IsNotYetLostWhileItIsAwaited) {
  RuleBench bench;
  EXPECT_EQ(bench.verdict(RuleId::level_lost), Verdict::off);
  state::Signal& gauge = bench.state.signals[RuleBench::gauge];
  bench.picture.level.reset();
  gauge.quality = Quality::bad;
  gauge.why = Why::awaiting_after_link;
  gauge.live = false;
  bench.state.circumstances.started = bench.picture.now - 5s;
  EXPECT_EQ(bench.verdict(RuleId::level_lost), Verdict::unknown);
  gauge.why = Why::stale;
  gauge.live = true;
  EXPECT_EQ(bench.verdict(RuleId::level_lost), Verdict::on);
  bench.state.circumstances.link_up = false;
  EXPECT_EQ(bench.verdict(RuleId::level_lost), Verdict::unknown);
}

TEST(LevelLost, NeedsTwoGoodReadingsToEnd) {
  RuleBench bench;
  bench.state.signals[RuleBench::gauge].good_in_a_row = 1;
  EXPECT_EQ(bench.verdict(RuleId::level_lost), Verdict::unknown);
}

TEST(LevelFlat, WaitsThreeGaugeStepsOfTheSlowestFlow) {
  // A whole-percent gauge on 500 L moves by 5 L; at 7 L/h that is 5/7 h = 42.9 min a step.
  Filling bench;
  bench.room.instruments[RuleBench::gauge].step = 5;
  bench.picture.flow_lowest = LitresPerHour{7};
  bench.fill.flat = 128min;
  EXPECT_EQ(bench.verdict(RuleId::level_flat_while_filling), Verdict::off);
  bench.fill.flat = 129min;
  EXPECT_EQ(bench.verdict(RuleId::level_flat_while_filling), Verdict::on);
}

TEST(LevelFlat, IsNeverJudgedInUnderTwentyMinutesNorWhileNothingRuns) {
  Filling bench;
  bench.room.instruments[RuleBench::gauge].step = 0.1;
  bench.fill.flat = 20min - 1ms;
  EXPECT_EQ(bench.verdict(RuleId::level_flat_while_filling), Verdict::off);
  bench.fill.flat = 20min;
  EXPECT_EQ(bench.verdict(RuleId::level_flat_while_filling), Verdict::on);
  bench.picture.commanded = false;
  EXPECT_EQ(bench.verdict(RuleId::level_flat_while_filling), Verdict::off);
}

TEST(FillOverlong, IsThreeTimesTheExpectedTimeWithWhatWasDrawnAdded) {
  Filling bench;
  bench.fill.worked = 20h;
  bench.fill.drawn = Litres{18};
  bench.fill.expected = Litres{299};  // 3 x (80 + 18 + one step of 2) = 300
  EXPECT_EQ(bench.verdict(RuleId::fill_overlong), Verdict::off);
  bench.fill.expected = Litres{300};
  EXPECT_EQ(bench.verdict(RuleId::fill_overlong), Verdict::on);
}

TEST(FillOverlong, AfterThreeFillsIsOneAndAHalfTimesWhatTheyTook) {
  Filling bench;  // 80 L and one step of 2 are meant
  bench.state.ledger.learned = {.fills = 2, .share = 1};
  bench.fill.expected = Litres{124};
  EXPECT_EQ(bench.verdict(RuleId::fill_overlong), Verdict::off) << "two fills teach nothing yet";
  bench.state.ledger.learned.fills = 3;
  EXPECT_EQ(bench.verdict(RuleId::fill_overlong), Verdict::on);  // 1.5 x 82 = 123
  bench.fill.expected = Litres{122};
  EXPECT_EQ(bench.verdict(RuleId::fill_overlong), Verdict::off);
  bench.state.ledger.learned.share = 0.75;  // a purifier that gives three quarters of its rating
  bench.fill.expected = Litres{163};
  EXPECT_EQ(bench.verdict(RuleId::fill_overlong), Verdict::off);
  bench.fill.expected = Litres{165};  // 1.5 x 82 / 0.75 = 164
  EXPECT_EQ(bench.verdict(RuleId::fill_overlong), Verdict::on);
  bench.state.ledger.learned.share = 0.25;  // never more than three times
  bench.fill.expected = Litres{246};
  EXPECT_EQ(bench.verdict(RuleId::fill_overlong), Verdict::on);
}

TEST(FillOverlong, WithoutAGaugeMeansTheWholeVat) {
  Filling bench;
  bench.room.instruments[RuleBench::gauge].quantity = room::Quantity::temperature;
  bench.fill.to_go = Litres{200};  // as the ledger has it then
  bench.fill.expected = Litres{599};
  EXPECT_EQ(bench.verdict(RuleId::fill_overlong), Verdict::off);
  bench.fill.expected = Litres{600};
  EXPECT_EQ(bench.verdict(RuleId::fill_overlong), Verdict::on);
}

TEST(FillOverlong, HasALongestRunWhateverIsExpected) {
  Filling bench;
  bench.fill.worked = 72h;
  EXPECT_EQ(bench.verdict(RuleId::fill_overlong), Verdict::on);
  bench.fill.under_way = false;
  EXPECT_EQ(bench.verdict(RuleId::fill_overlong), Verdict::off);
}

TEST(FillNotStopping, IsJudgedTwoMinutesAfterOffAndOnlyWhereAValveStopsTheWater) {
  RuleBench bench;
  bench.state.drives[0].commanded = bench.picture.now - 1min;
  bench.state.ledger.level.at_off = Litres{90};
  bench.state.ledger.level.peak = Litres{100};
  bench.state.ledger.level.rate = LitresPerHour{10};
  bench.state.ledger.level.moved = bench.picture.now - 30s;
  EXPECT_EQ(bench.verdict(RuleId::fill_not_stopping), Verdict::unknown);
  bench.state.drives[0].commanded = bench.picture.now - 1h;
  EXPECT_EQ(bench.verdict(RuleId::fill_not_stopping), Verdict::on);
  bench.room.purifier->water_stops_with = room::WaterStopsWith::pump;
  EXPECT_EQ(bench.verdict(RuleId::fill_not_stopping), Verdict::off);
}

TEST(FillNotStopping, EndsWhenTheLevelStands) {
  RuleBench bench;
  bench.state.drives[0].commanded = bench.picture.now - 5h;
  bench.state.ledger.level.at_off = Litres{90};
  bench.state.ledger.level.peak = Litres{100};
  bench.state.ledger.level.rate = LitresPerHour{10};
  bench.state.ledger.level.moved = bench.picture.now - 1h;
  EXPECT_EQ(bench.verdict(RuleId::fill_not_stopping), Verdict::off);
}

TEST(FillNotStopping, PowerAfterOffContradictsAFeedbackThatSaysOff) {
  RuleBench bench;
  bench.state.drives[0].commanded = bench.picture.now - 1h;
  bench.state.signals[RuleBench::watts].value = 30;
  EXPECT_EQ(bench.judge(RuleId::fill_not_stopping).why.why, Why::runs_after_off);
  bench.state.signals[RuleBench::feedback].value = 1;
  EXPECT_EQ(bench.verdict(RuleId::fill_not_stopping), Verdict::off) << "switched by hand";
}

TEST(PumpDry, IsLowPressureBeforeTheRunningPumpAtAnyQualityButGarbage) {
  RuleBench bench;
  room::Instrument gauge;
  gauge.quantity = room::Quantity::pressure;
  gauge.place = room::Place::feed;
  bench.room.instruments.push_back(gauge);
  state::Signal& pressure = bench.state.signals[bench.room.instruments.size() - 1];
  bench.picture.commanded = true;
  bench.state.signals[RuleBench::watts].value = 60;
  bench.state.drives[0].on = true;
  bench.state.signals[RuleBench::watts].received = bench.picture.now;
  pressure.value = 3;
  EXPECT_EQ(bench.verdict(RuleId::pump_dry), Verdict::off);
  pressure.value = 0.2;
  EXPECT_EQ(bench.verdict(RuleId::pump_dry), Verdict::on);
  EXPECT_EQ(bench.judge(RuleId::pump_dry).why.why, Why::pressure_low);
  pressure.quality = Quality::uncertain;
  EXPECT_EQ(bench.verdict(RuleId::pump_dry), Verdict::on);
  pressure.quality = Quality::bad;
  EXPECT_EQ(bench.verdict(RuleId::pump_dry), Verdict::off) << "the power speaks for it";
  bench.picture.commanded = false;
  pressure.quality = Quality::good;
  EXPECT_EQ(bench.verdict(RuleId::pump_dry), Verdict::off);
}

TEST(PumpDry, IsNotJudgedByWhatTheMeterSaidBeforeTheStart) {
  Filling bench;
  state::Signal& watts = bench.state.signals[RuleBench::watts];
  state::Drive& drive = bench.state.drives[0];
  watts.value = 1;
  drive.on = true;
  drive.commanded = bench.picture.now - 2min;
  watts.received = drive.commanded - 1s;
  EXPECT_EQ(bench.verdict(RuleId::pump_dry), Verdict::unknown) << "one message was lost";
  watts.received = drive.commanded + 9s;
  EXPECT_EQ(bench.verdict(RuleId::pump_dry), Verdict::unknown) << "the motor is starting";
  watts.received = drive.commanded + 10s;
  EXPECT_EQ(bench.verdict(RuleId::pump_dry), Verdict::on);
  bench.room.instruments[RuleBench::watts].on_change = true;
  watts.received = drive.commanded - 1h;
  EXPECT_EQ(bench.verdict(RuleId::pump_dry), Verdict::on) << "silent because nothing changed";
}

TEST(PumpDry, IsNoPowerAwayFromTheFloatsLevel) {
  Filling bench;
  bench.state.drives[0].on = true;
  bench.state.signals[RuleBench::watts].received = bench.picture.now;
  bench.state.signals[RuleBench::watts].value = 1;
  EXPECT_EQ(bench.verdict(RuleId::pump_dry), Verdict::on);
  bench.picture.level = Litres{171};  // 95 % of STOP: the float valve may have closed
  EXPECT_EQ(bench.verdict(RuleId::pump_dry), Verdict::off);
  bench.picture.level = Litres{100};
  bench.picture.float_full = RuleBench::high_high;
  EXPECT_EQ(bench.verdict(RuleId::pump_dry), Verdict::off);
  bench.picture.float_full.reset();
  bench.state.signals[RuleBench::watts].value = 30;
  EXPECT_EQ(bench.verdict(RuleId::pump_dry), Verdict::off);
  bench.state.signals[RuleBench::watts].quality = Quality::bad;
  EXPECT_EQ(bench.verdict(RuleId::pump_dry), Verdict::unknown);
}

TEST(ShortCycling, IsTheSeventhStartInAnHour) {
  RuleBench bench;
  auto& starts = bench.state.ledger.working[0].starts;
  for (std::size_t i = 0; i < 6; ++i) {
    starts[i] = bench.picture.now - 5min * static_cast<int>(i);
  }
  EXPECT_EQ(bench.verdict(RuleId::short_cycling), Verdict::off);
  starts[6] = bench.picture.now - 59min;
  EXPECT_EQ(bench.verdict(RuleId::short_cycling), Verdict::on);
  EXPECT_EQ(bench.judge(RuleId::short_cycling).judge_again, bench.picture.now + 1min);
  bench.room.actuators[0].lease_kind = room::LeaseKind::plug_fixed;
  EXPECT_EQ(bench.verdict(RuleId::short_cycling), Verdict::off);
}

TEST(ResinBreakthrough, HasADeadbandOfOneMeterStep) {
  RuleBench bench;
  bench.room.instruments[RuleBench::product_meter].step = 0.1;
  bench.picture.product = picture::Judged{{0.9}, Litres{3}};
  EXPECT_EQ(bench.verdict(RuleId::resin_breakthrough), Verdict::off);
  bench.state.findings[RuleId::resin_breakthrough].active = true;
  EXPECT_EQ(bench.verdict(RuleId::resin_breakthrough), Verdict::on);
  bench.picture.product->ppm = {0.5};
  EXPECT_EQ(bench.verdict(RuleId::resin_breakthrough), Verdict::off);
  bench.picture.product.reset();
  EXPECT_EQ(bench.verdict(RuleId::resin_breakthrough), Verdict::unknown);
}

TEST(ResinBreakthrough, AtTheLimitOnlyWhatStaysThereCounts) {
  // A whole-ppm meter in perfect water shows 0 and 1; in water of 1 ppm it shows 1 each time.
  RuleBench bench;
  bench.picture.product = picture::Judged{{1}, Litres{3}, PartsPerMillion{0}};
  EXPECT_EQ(bench.verdict(RuleId::resin_breakthrough), Verdict::off);
  bench.picture.product->lowest = PartsPerMillion{1};
  EXPECT_EQ(bench.verdict(RuleId::resin_breakthrough), Verdict::on);
  bench.picture.product->lowest.reset();
  EXPECT_EQ(bench.verdict(RuleId::resin_breakthrough), Verdict::off);
}

TEST(ResinBreakthrough, NamesACauseOnlyWhereThePermeateIsKnown) {
  RuleBench bench;
  bench.picture.product = picture::Judged{{2}, Litres{3}};
  EXPECT_EQ(bench.judge(RuleId::resin_breakthrough).why.why, Why::product_above_zero);
  bench.picture.rejection = 0.97;
  EXPECT_EQ(bench.judge(RuleId::resin_breakthrough).why.why, Why::product_resin);
  bench.picture.rejection = 0.8;
  EXPECT_EQ(bench.judge(RuleId::resin_breakthrough).why.why, Why::product_membrane);
}

TEST(ResinBreakthrough, EndsWhenTheCanistersWereRotated) {
  RuleBench bench;
  state::Finding& finding = bench.state.findings[RuleId::resin_breakthrough];
  finding.active = true;
  finding.active_since = bench.picture.now - 1h;
  bench.picture.product = picture::Judged{{2}, Litres{3}};
  bench.state.ledger.resin_changed = bench.picture.now;
  EXPECT_EQ(bench.verdict(RuleId::resin_breakthrough), Verdict::off);
}

TEST(VatLow, IsTheLowMarkOrThreeDaysOfTopOffWithADeadband) {
  RuleBench bench;
  bench.picture.level = Litres{40};
  EXPECT_EQ(bench.verdict(RuleId::vat_low), Verdict::off);
  bench.picture.level = Litres{39.9};
  EXPECT_EQ(bench.verdict(RuleId::vat_low), Verdict::on);
  bench.state.findings[RuleId::vat_low].active = true;
  bench.picture.level = Litres{45.9};  // 40 + 3 % of 200
  EXPECT_EQ(bench.verdict(RuleId::vat_low), Verdict::on);
  bench.picture.level = Litres{46};
  EXPECT_EQ(bench.verdict(RuleId::vat_low), Verdict::off);
  bench.state.findings[RuleId::vat_low].active = false;
  bench.room.vat->top_off_per_day = Litres{16};  // three days: 48 L
  EXPECT_EQ(bench.verdict(RuleId::vat_low), Verdict::on);
  bench.picture.level.reset();
  EXPECT_EQ(bench.verdict(RuleId::vat_low), Verdict::unknown);
}

}  // namespace
}  // namespace tidewright
