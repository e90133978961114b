#include "daemon/commands/trace.hpp"

#include <gtest/gtest.h>

#include "core/rules/catalogue.hpp"
#include "tests/support/rooms.hpp"

namespace tidewright {
namespace {

room::Room with_rules(room::Room room) {
  room.rules = rules::default_settings();
  return room;
}

TEST(Trace, TellsALeakStageByStageInTheOrderOfTheStep) {
  const std::string page = commands::trace_leak(with_rules(support::full_room()));
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

TEST(Trace, SaysSoWhereNothingWouldNotice) {
  EXPECT_NE(commands::trace_leak(room::Room{}).find("no leak sensor"), std::string::npos);
}

}  // namespace
}  // namespace tidewright
