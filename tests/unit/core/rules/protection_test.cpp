// The rules that watch the protections: water, its sensors, and whether what is told is done.
#include <gtest/gtest.h>

#include "tests/unit/core/rules/bench.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using picture::Watch;
using room::RuleId;
using rules::Verdict;

TEST(Leak, IsBelievedAtAnyQualityAndEndsOnlyWithGoodDryNews) {
  RuleBench bench;
  bench.picture.wet = RuleBench::floor;
  bench.picture.leak_watch = Watch::lost;
  EXPECT_EQ(bench.verdict(RuleId::leak), Verdict::on);
  EXPECT_EQ(bench.judge(RuleId::leak).why.subject, RuleBench::floor);
  bench.picture.wet.reset();
  EXPECT_EQ(bench.verdict(RuleId::leak), Verdict::unknown) << "silence is not dry";
  bench.picture.leak_watch = Watch::awaited;
  EXPECT_EQ(bench.verdict(RuleId::leak), Verdict::unknown);
  bench.picture.leak_watch = Watch::good;
  EXPECT_EQ(bench.verdict(RuleId::leak), Verdict::off);
}

TEST(LeakSensorLost, IsNotTheSensorsFaultWhileTheLinkIsDown) {
  RuleBench bench;
  bench.picture.leak_watch = Watch::lost;
  bench.picture.leak_doubtful = RuleBench::floor;
  EXPECT_EQ(bench.verdict(RuleId::leak_sensor_lost), Verdict::on);
  bench.state.circumstances.link_up = false;
  EXPECT_EQ(bench.verdict(RuleId::leak_sensor_lost), Verdict::unknown);
}

TEST(LeakSensorLost, ComesBackWithTwoGoodReadingsOrOneOfAnOnChangeSensor) {
  RuleBench bench;
  bench.state.signals[RuleBench::floor].good_in_a_row = 1;
  EXPECT_EQ(bench.verdict(RuleId::leak_sensor_lost), Verdict::unknown);
  bench.room.instruments[RuleBench::floor].on_change = true;
  EXPECT_EQ(bench.verdict(RuleId::leak_sensor_lost), Verdict::off);
  bench.picture.leak_watch = Watch::none_installed;
  EXPECT_EQ(bench.verdict(RuleId::leak_sensor_lost), Verdict::off);
}

TEST(VatHighHigh, EndsOnlyAtGoodQuality) {
  RuleBench bench;
  bench.picture.high_high_wet = RuleBench::high_high;
  EXPECT_EQ(bench.verdict(RuleId::vat_high_high), Verdict::on);
  bench.picture.high_high_wet.reset();
  EXPECT_EQ(bench.verdict(RuleId::vat_high_high), Verdict::off);
  bench.state.signals[RuleBench::high_high].quality = Quality::bad;
  EXPECT_EQ(bench.verdict(RuleId::vat_high_high), Verdict::unknown);
}

TEST(ActuatorDisobeys, WhenTheFeedbackStaysOnPastTheTimeItIsDue) {
  RuleBench bench;
  state::Drive& drive = bench.state.drives[0];
  bench.state.signals[RuleBench::feedback].value = 1;
  bench.room.instruments[RuleBench::feedback].on_change = true;
  drive.commanded = bench.picture.now - 9s;
  EXPECT_EQ(bench.verdict(RuleId::actuator_disobeys), Verdict::off);
  EXPECT_EQ(bench.judge(RuleId::actuator_disobeys).judge_again, bench.picture.now + 1s);
  drive.commanded = bench.picture.now - 10s;  // 10 s and no travel
  EXPECT_EQ(bench.verdict(RuleId::actuator_disobeys), Verdict::on);
  EXPECT_EQ(bench.judge(RuleId::actuator_disobeys).why.why, Why::off_not_obeyed);
  bench.state.signals[RuleBench::feedback].quality = Quality::bad;
  EXPECT_EQ(bench.verdict(RuleId::actuator_disobeys), Verdict::off) << "unplugged is off";
}

TEST(ActuatorDisobeys, AHandOnTheButtonIsNoDisobedienceUntilOffIsIgnoredThrice) {
  RuleBench bench;
  state::Drive& drive = bench.state.drives[0];
  bench.state.signals[RuleBench::feedback].value = 1;
  drive.commanded = bench.picture.now - 1h;
  drive.obeyed = true;
  bench.state.ledger.working[0].since = bench.picture.now - 20min;
  EXPECT_EQ(bench.verdict(RuleId::actuator_disobeys), Verdict::off);
  drive.resent = 3;
  EXPECT_EQ(bench.verdict(RuleId::actuator_disobeys), Verdict::on);
}

TEST(ActuatorDisobeys, AnOnThatWasIgnoredTwiceIsLessUrgent) {
  RuleBench bench;
  bench.state.drives[0].ignored = 1;
  EXPECT_EQ(bench.verdict(RuleId::actuator_disobeys), Verdict::off);
  bench.state.drives[0].ignored = 2;
  const rules::Judgement judgement = bench.judge(RuleId::actuator_disobeys);
  EXPECT_EQ(judgement.verdict, Verdict::on);
  const rules::Rule& rule = rules::rule(RuleId::actuator_disobeys);
  EXPECT_EQ(rules::priority_of(rule, judgement.why), rules::Priority::soon);
  EXPECT_EQ(rules::priority_of(rule, {Why::off_not_obeyed, 0, {}}), rules::Priority::urgent);
}

TEST(CommandUndelivered, WhenTheBrokerRefusesOrNobodyHearsAnOff) {
  RuleBench bench;
  auto& code = bench.state.circumstances.delivery[0];
  EXPECT_EQ(bench.verdict(RuleId::command_undelivered), Verdict::off);
  code = 135;  // "not authorized", OASIS MQTT 5.0, 3.4.2.1
  EXPECT_EQ(bench.verdict(RuleId::command_undelivered), Verdict::on);
  code = 16;  // "no matching subscribers", the same table
  EXPECT_EQ(bench.verdict(RuleId::command_undelivered), Verdict::off) << "feedback says OFF";
  bench.state.signals[RuleBench::feedback].quality = Quality::bad;
  EXPECT_EQ(bench.verdict(RuleId::command_undelivered), Verdict::on);
  bench.state.drives[0].on = true;
  EXPECT_EQ(bench.verdict(RuleId::command_undelivered), Verdict::off);
}

TEST(BrokerLost, CountsFromTheLossOrTheStart) {
  RuleBench bench;
  EXPECT_EQ(bench.verdict(RuleId::broker_lost), Verdict::off);
  bench.state.circumstances.link_up = false;
  bench.state.circumstances.started = bench.picture.now - 90s;
  EXPECT_EQ(bench.judge(RuleId::broker_lost).why.numbers[0], 90);
  bench.state.circumstances.link_since = bench.picture.now - 20s;
  EXPECT_EQ(bench.judge(RuleId::broker_lost).why.numbers[0], 20);
}

TEST(StoreFailed, IsOnWhileTheDiskRefuses) {
  RuleBench bench;
  EXPECT_EQ(bench.verdict(RuleId::store_failed), Verdict::off);
  bench.state.circumstances.recording = false;
  EXPECT_EQ(bench.verdict(RuleId::store_failed), Verdict::on);
}

TEST(UncleanStart, IsShownForFiveMinutes) {
  RuleBench bench;
  bench.state.circumstances.started = bench.picture.now - 299s;
  EXPECT_EQ(bench.verdict(RuleId::unclean_start), Verdict::off);
  EXPECT_EQ(bench.verdict(RuleId::records_unreadable), Verdict::off);
  bench.state.circumstances.unclean = true;
  EXPECT_EQ(bench.verdict(RuleId::unclean_start), Verdict::on);
  EXPECT_EQ(bench.judge(RuleId::unclean_start).judge_again, bench.picture.now + 1s);
  bench.state.circumstances.started = bench.picture.now - 300s;
  EXPECT_EQ(bench.verdict(RuleId::unclean_start), Verdict::off);
}

}  // namespace
}  // namespace tidewright
