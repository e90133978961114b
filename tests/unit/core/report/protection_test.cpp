#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/report/report.hpp"
#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using support::Minimal;
using support::Stage;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

class ProtectionReport : public testing::Test {
 protected:
  void SetUp() override {
    stage.begin();
    stage.happen(ClockSet{});
    stage.wait(3min);
  }
  report::Value value(const std::string& kind, const std::string& field) const {
    for (const report::Thing& thing : report::describe(stage.room, stage.state).things) {
      if (thing.kind != kind) continue;
      for (const report::Field& each : thing.fields) {
        if (each.name == field) return each.value;
      }
    }
    return report::Unknown{};
  }
  std::vector<std::string> list(const std::string& field) const {
    return std::get<std::vector<std::string>>(value("protection", field));
  }
  Stage stage;
};

TEST_F(ProtectionReport, TellsWhatIsBypassedByWhomAndWhy) {
  EXPECT_THAT(list("bypassed"), IsEmpty());
  for (const AskKind kind : {AskKind::bypass, AskKind::confirm_bypass}) {
    stage.happen(Ask{.kind = kind,
                     .ticket = 1,
                     .cause = room::CauseId::frost,
                     .lasting = 1h,
                     .token = 1,
                     .who = Name("ann"),
                     .why = Remark("the probe fell")});
  }
  EXPECT_THAT(list("bypassed"), ElementsAre("frost until 01:03 by ann: the probe fell"));
  EXPECT_THAT(std::get<std::string>(value("actuator", "why")),
              HasSubstr("frost is bypassed until 01:03 by ann"));
  stage.wait(1h);
  EXPECT_THAT(list("bypassed"), IsEmpty());
}

TEST_F(ProtectionReport, TellsEachTestWithItsDate) {
  EXPECT_THAT(list("proof_tests_due"), ElementsAre("floor", "the lease of booster"));
  EXPECT_THAT(list("proof_tests"), Contains(HasSubstr("floor: never tried; due since 2019-12-20")));
  stage.says(Minimal::floor, 1);
  stage.happen(Tell{.kind = TellKind::tested, .ticket = 1, .instrument = Minimal::floor});
  // 91 days later.
  EXPECT_THAT(list("proof_tests"),
              Contains(HasSubstr("floor: passed on 2019-12-20 (0 s); due on 2020-03-20")));
  EXPECT_THAT(list("proof_tests_due"), ElementsAre("the lease of booster"));
}

}  // namespace
}  // namespace tidewright
