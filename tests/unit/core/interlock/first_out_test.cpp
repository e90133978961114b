// First-out: which trip came first, with what was seen then, stays known until the reset.
#include <gtest/gtest.h>

#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using room::RuleId;
using support::Stage;

struct FirstOut : testing::Test {
  FirstOut() : stage(support::full_room()) {
    stage.begin();
    stage.wait(2min);
  }
  const state::Latch& latch(RuleId id) const { return stage.state.latches[id]; }
  Stage stage;
};

TEST_F(FirstOut, TwoInOnePassAreBothMarked) {
  // The high-high switch counts after 1 s; in that very pass the floor says wet.
  stage.says(support::high_high, 1);
  ASSERT_FALSE(latch(RuleId::vat_high_high).set);
  stage.now += 1s;
  stage.says(support::floor, 1);
  EXPECT_TRUE(latch(RuleId::vat_high_high).first);
  EXPECT_TRUE(latch(RuleId::leak).first);
}

TEST_F(FirstOut, WhatFollowsIsNotMarked) {
  stage.says(support::floor, 1);
  stage.says(support::high_high, 1);
  stage.wait(2s);
  EXPECT_TRUE(latch(RuleId::leak).first);
  ASSERT_TRUE(latch(RuleId::vat_high_high).set);
  EXPECT_FALSE(latch(RuleId::vat_high_high).first);
}

TEST_F(FirstOut, TheFirstSampleIsKeptUntilTheReset) {
  stage.says(support::second_floor, 1);
  const Reason first = latch(RuleId::leak).cause;
  EXPECT_EQ(first.why, Why::wet);
  EXPECT_EQ(first.subject, support::second_floor);
  stage.says(support::floor, 1);
  stage.says(support::second_floor, 0);
  stage.wait(1h);
  EXPECT_EQ(latch(RuleId::leak).cause, first);
  stage.says(support::floor, 0);
  stage.wait(5min);
  Ask ask{.kind = AskKind::reset, .ticket = 1, .alarm = RuleId::leak, .token = 5};
  stage.happen(ask);
  EXPECT_EQ(latch(RuleId::leak).cause, first);
  ask.kind = AskKind::confirm;
  stage.happen(ask);
  EXPECT_FALSE(latch(RuleId::leak).set);
}

}  // namespace
}  // namespace tidewright
