#include "daemon/commands/trace.hpp"

#include <gtest/gtest.h>

#include "core/rules/catalogue.hpp"
#include "tests/support/rooms.hpp"

namespace tidewright {
namespace {

TEST(Trace, TellsALeakStageByStageInTheOrderOfTheStep) {
  const std::string page = commands::trace(support::full_room(), room::RuleId::leak);
  std::size_t at = 0;
  for (const char* stage : {"event", "signal", "ledger", "picture", "rules", "procedure",
                            "interlock", "alarm", "effects", "report"}) {
    const std::size_t found = page.find(stage, at);
    ASSERT_NE(found, std::string::npos) << stage << " is not after the one before it in\n" << page;
    at = found;
  }
  EXPECT_NE(page.find("the booster pump: ON -> OFF"), std::string::npos) << page;
  EXPECT_NE(page.find("leak: normal -> unacknowledged"), std::string::npos) << page;
}

TEST(Trace, EveryAlarmComesAboutInARoomThatCanNoticeIt) {
  room::Room room = support::full_room();
  room.purifier->water_stops_with = room::WaterStopsWith::valve;
  for (const rules::Rule* rule : rules::catalogue) {
    const std::string page = commands::trace(room, rule->id);
    EXPECT_NE(page.find(std::string(rule->name) + " is found: "), std::string::npos) << page;
    EXPECT_NE(page.find(rule->title), std::string::npos) << page;
  }
}

TEST(Trace, SaysSoWhereNothingWouldNotice) {
  const std::string page = commands::trace(room::Room{}, room::RuleId::leak);
  EXPECT_NE(page.find("nothing by which `leak`"), std::string::npos);
}

}  // namespace
}  // namespace tidewright
