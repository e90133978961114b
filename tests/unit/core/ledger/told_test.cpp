#include "core/ledger/told.hpp"

#include <gtest/gtest.h>

#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using support::Minimal;
using support::Stage;

class Told : public testing::Test {
 protected:
  void SetUp() override { stage.begin(); }
  Answer answer(Tell tell) {
    tell.ticket = 9;
    stage.happen(tell);
    EXPECT_EQ(stage.answers.size(), 1U);
    return stage.answers.empty() ? Answer{} : stage.answers.front();
  }
  Stage stage;
};

TEST_F(Told, EveryFactIsAnswered) {
  for (const Tell& tell :
       {Tell{.kind = TellKind::measured, .instrument = Minimal::product, .value = 0},
        Tell{.kind = TellKind::rotated}, Tell{.kind = TellKind::replaced},
        Tell{.kind = TellKind::tested, .instrument = Minimal::level}}) {
    const Answer given = answer(tell);
    EXPECT_TRUE(given.done);
    EXPECT_EQ(given.ticket, 9U);
    EXPECT_EQ(given.why.why, Why::done);
  }
}

TEST_F(Told, AValueThatCannotBeIsRefusedWithItsLimits) {
  const Answer given =
      answer({.kind = TellKind::measured, .instrument = Minimal::product, .value = -1});
  EXPECT_FALSE(given.done);
  EXPECT_EQ(given.why.why, Why::value_out_of_range);
  EXPECT_EQ(given.why.numbers[0], -1);
  EXPECT_EQ(given.why.numbers[2], 5000);  // the meter's range in rooms.cpp
}

TEST_F(Told, AnInstrumentThatIsNotThereIsRefused) {
  EXPECT_EQ(answer({.kind = TellKind::tested, .instrument = 200}).why.why, Why::no_such_thing);
}

TEST_F(Told, ChangedResinIsKept) {
  stage.happen(Tell{.kind = TellKind::rotated});
  EXPECT_EQ(stage.state.ledger.resin_changed, stage.now);
}

}  // namespace
}  // namespace tidewright
