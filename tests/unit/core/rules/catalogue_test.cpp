#include <gtest/gtest.h>

#include "tests/unit/core/rules/bench.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using room::RuleId;

TEST(Catalogue, StandsInTheOrderOfTheRulesAndIsFoundByName) {
  for (std::size_t i = 0; i < room::rule_count; ++i) {
    const rules::Rule& rule = *rules::catalogue[i];
    EXPECT_EQ(static_cast<std::size_t>(rule.id), i) << rule.name;
    EXPECT_EQ(rules::rule_named(rule.name), rule.id);
  }
  EXPECT_EQ(rules::rule_named("lek"), std::nullopt);
}

TEST(Catalogue, EveryRecordIsWholeAndInPlainText) {
  for (const rules::Rule* rule : rules::catalogue) {
    const rules::Record& record = rule->record;
    for (const auto text : {rule->title, record.source, record.limit, record.origin, record.causes,
                            record.consequence, record.action, record.automatic, record.test}) {
      EXPECT_GT(text.size(), 10u) << rule->name;
      EXPECT_EQ(text.find("  "), std::string_view::npos) << text;
      EXPECT_NE(text.back(), '.') << text;
    }
    EXPECT_GT(rule->respond_within, 0s) << rule->name << ": an alarm without time to act is none";
    ASSERT_NE(rule->applies, nullptr) << rule->name;
    ASSERT_NE(rule->judge, nullptr) << rule->name;
  }
}

TEST(Catalogue, ALeakAndABypassMayNeverBeShelved) {
  for (const rules::Rule* rule : rules::catalogue) {
    const bool never = rule->id == RuleId::leak || rule->id == RuleId::bypass_active;
    EXPECT_EQ(rule->may_be_shelved, !never) << rule->name;
  }
}

TEST(Catalogue, EveryRuleIsQuietInAnEmptyRoom) {
  const room::Room room;
  State state;
  state.circumstances.link_up = true;
  const picture::Picture picture = picture::draw(room, state);
  for (const rules::Rule* rule : rules::catalogue) {
    EXPECT_NE(rule->judge(picture).verdict, rules::Verdict::on) << rule->name;
  }
}

struct Delays : RuleBench {
  // The finding after `later`, with the wake it asked for.
  const state::Finding& pass(Duration later) {
    picture.now += later;
    wake = {};
    rules::judge(picture, state.findings, wake);
    return state.findings[RuleId::leak];
  }
  Wake wake;
};

TEST(Judge, ALeakIsFoundAtOnceAndEndsAfterTenDryMinutes) {
  Delays bench;
  bench.picture.wet = RuleBench::floor;
  EXPECT_TRUE(bench.pass(0s).active);
  bench.picture.wet.reset();
  EXPECT_TRUE(bench.pass(1s).active);
  EXPECT_EQ(bench.wake.at, bench.picture.now + 10min);
  EXPECT_TRUE(bench.pass(10min - 1ms).active);
  EXPECT_FALSE(bench.pass(1ms).active);
}

TEST(Judge, UnknownLeavesAFindingAsItWas) {
  Delays bench;
  bench.picture.leak_watch = picture::Watch::lost;
  EXPECT_FALSE(bench.pass(1h).raw);
  bench.picture.wet = RuleBench::floor;
  EXPECT_TRUE(bench.pass(1s).raw);
  bench.picture.wet.reset();
  EXPECT_TRUE(bench.pass(1h).raw);
}

TEST(Judge, AFlickerShorterThanTheOnDelayIsNotFound) {
  Delays bench;
  bench.room.rules[RuleId::leak].on_delay = 5s;
  bench.picture.wet = RuleBench::floor;
  EXPECT_FALSE(bench.pass(0s).active);
  bench.picture.wet.reset();
  bench.pass(4s);
  bench.picture.wet = RuleBench::floor;
  EXPECT_FALSE(bench.pass(1s).active);
  EXPECT_EQ(bench.wake.at, bench.picture.now + 5s);
  EXPECT_TRUE(bench.pass(5s).active);
}

TEST(Judge, KeepsTheLastSixActivationsNewestFirst) {
  Delays bench;
  bench.room.rules[RuleId::leak].off_delay = 0s;
  for (int i = 0; i < 8; ++i) {
    bench.picture.wet = RuleBench::floor;
    bench.pass(1min);
    bench.picture.wet.reset();
    bench.pass(1min);
  }
  const auto& activations = bench.state.findings[RuleId::leak].activations;
  EXPECT_EQ(activations.front(), bench.picture.now - 1min);
  EXPECT_EQ(activations.back(), bench.picture.now - 11min);
}

}  // namespace
}  // namespace tidewright
