#include "core/ledger/proof.hpp"

#include <gtest/gtest.h>

#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using support::Stage;

// A fill runs; pump and feed valve obey at once, or by hand.
class ProofTest : public testing::Test {
 protected:
  void SetUp() override {
    stage.begin();
    stage.wait(3min);
    ASSERT_TRUE(stage.is_on());
  }
  Answer told(room::InstrumentIndex i) {
    stage.happen(Tell{.kind = TellKind::tested, .ticket = 9, .instrument = i});
    EXPECT_EQ(stage.answers.size(), 1u);
    return stage.answers.empty() ? Answer{} : stage.answers.front();
  }
  const state::Proof& proof(room::InstrumentIndex i) const {
    return stage.state.proofs.instruments[i];
  }
  Stage stage{support::full_room()};
};

TEST_F(ProofTest, AWetClothIsTimedFromTheDemandToTheLastOff) {
  stage.plug_obeys = false;
  stage.says(support::floor, 1);
  stage.now += 2s;
  stage.says(support::feedback, 0);
  stage.now += 1s;
  stage.says(support::valve_feedback, 0);
  stage.now += 4min;  // the person has come back from the floor
  const Answer answer = told(support::floor);
  EXPECT_TRUE(answer.done);
  EXPECT_EQ(answer.why.why, Why::tested);
  EXPECT_EQ(answer.why.numbers[0], 3);
  EXPECT_TRUE(proof(support::floor).passed);
  EXPECT_EQ(proof(support::floor).at, stage.now);
  EXPECT_EQ(proof(support::second_floor).at, long_ago);
}

TEST_F(ProofTest, AClothThatIsSaidAgainBeginsNoNewTime) {
  stage.plug_obeys = false;
  stage.says(support::floor, 1);
  stage.now += 2s;
  stage.says(support::floor, 0);
  stage.now += 2s;
  stage.says(support::floor, 1);
  stage.now += 1s;
  stage.says(support::feedback, 0);
  stage.says(support::valve_feedback, 0);
  EXPECT_EQ(told(support::floor).why.numbers[0], 5);
}

TEST_F(ProofTest, FailsWhereSomethingIsNotOff) {
  stage.plug_obeys = false;
  stage.says(support::floor, 1);
  stage.says(support::feedback, 0);
  stage.wait(1min);
  EXPECT_EQ(told(support::floor).why.why, Why::tested_and_not_off);
  EXPECT_TRUE(state::has_failed(proof(support::floor)));
  // Somebody has pulled the plug: that proves nothing.
  stage.says(support::valve_feedback, 0);
  EXPECT_EQ(told(support::floor).why.why, Why::tested_and_not_off);
}

TEST_F(ProofTest, TheHighHighSwitchIsTriedTheSameWay) {
  stage.says(support::high_high, 1);
  stage.wait(5s);
  EXPECT_EQ(told(support::high_high).why.why, Why::tested);
  EXPECT_LE(proof(support::high_high).figure, 1);  // its on-delay
}

TEST_F(ProofTest, ThatWasNotSeenIsRefused) {
  EXPECT_EQ(told(support::floor).why.why, Why::not_reached_lately);
  stage.happen(Ask{.kind = AskKind::stop, .ticket = 1});
  stage.says(support::floor, 1);  // at rest: nothing is switched off by it
  EXPECT_EQ(told(support::floor).why.why, Why::not_reached_lately);
  EXPECT_EQ(proof(support::floor).at, long_ago);
}

TEST_F(ProofTest, IsToldWithinAnHour) {
  stage.says(support::floor, 1);
  stage.wait(61min);
  EXPECT_EQ(told(support::floor).why.why, Why::not_reached_lately);
}

TEST_F(ProofTest, ARestartForgetsTheTrialAndNoResult) {
  stage.says(support::floor, 1);
  ASSERT_EQ(told(support::floor).why.why, Why::tested);
  stage.happen(Started{.clean = true});
  EXPECT_TRUE(proof(support::floor).passed);
  EXPECT_EQ(told(support::floor).why.why, Why::not_reached_lately);
}

// A floor whose sensor never gets wet in three months is not known to be dry. Three months and four
// weeks of grace.
TEST_F(ProofTest, IsDueAgainAfterThreeMonths) {
  using room::RuleId;
  const auto is_due = [&] { return stage.state.findings[RuleId::proof_test_due].active; };
  stage.says(support::floor, 1);
  stage.says(support::high_high, 1);
  told(support::floor);
  stage.state.proofs.instruments[support::high_high] = proof(support::floor);
  stage.state.proofs.instruments[support::second_floor] = proof(support::floor);
  for (state::Proof& lease : stage.state.lease_tests.results) lease = {.at = stage.now + 24h * 365};
  stage.now += 24h * (91 + 28) - 1min;
  stage.happen(Tick{});
  EXPECT_FALSE(is_due());
  stage.now += 1min;
  stage.happen(Tick{});
  EXPECT_TRUE(is_due());
}

}  // namespace
}  // namespace tidewright
