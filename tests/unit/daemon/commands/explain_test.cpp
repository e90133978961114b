#include "daemon/commands/explain.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <sstream>

#include "daemon/commands/alarm_record.hpp"
#include "daemon/commands/list.hpp"

namespace tidewright {
namespace {

TEST(Explain, TellsTheWholeRecordOfAnAlarm) {
  std::ostringstream out;
  std::ostringstream err;
  EXPECT_EQ(commands::explain("leak", false, out, err), 0);
  EXPECT_NE(out.str().find("Close the feed cock by hand"), std::string::npos);
  EXPECT_NE(out.str().find("30 min"), std::string::npos);
  EXPECT_TRUE(err.str().empty());
}

TEST(Explain, NamesTheAlarmsThatThereAre) {
  std::ostringstream out;
  std::ostringstream err;
  EXPECT_EQ(commands::explain("lek", false, out, err), 64);  // EX_USAGE of sysexits.h
  EXPECT_TRUE(out.str().empty());
  EXPECT_NE(err.str().find("vat_high_high"), std::string::npos);
}

TEST(Explain, GivesJsonWithUnitsInTheNames) {
  std::ostringstream out;
  std::ostringstream err;
  commands::explain("level_lost", true, out, err);
  const auto record = nlohmann::json::parse(out.str());
  EXPECT_EQ(record["off_delay_s"], 120);
  EXPECT_EQ(record["consequence_of"], "broker_lost");
}

TEST(Explain, TracesALeakThroughTheHouseholdsOwnRoom) {
  std::ostringstream out;
  std::ostringstream err;
  const std::string minimal = TIDEWRIGHT_SOURCE_DIR "/config/minimal.toml";
  EXPECT_EQ(commands::explain_trace("leak", minimal, out, err), 0);
  EXPECT_NE(out.str().find("ON -> OFF"), std::string::npos) << out.str();
  EXPECT_EQ(commands::explain_trace("flood", minimal, out, err), 64);
}

TEST(List, HasFourListsInThreeForms) {
  for (const char* what : {"alarms", "keys", "quantities", "topics"}) {
    std::ostringstream text;
    std::ostringstream json;
    std::ostringstream markdown;
    std::ostringstream err;
    EXPECT_EQ(commands::list(what, commands::Form::text, text, err), 0);
    EXPECT_EQ(commands::list(what, commands::Form::json, json, err), 0);
    EXPECT_EQ(commands::list(what, commands::Form::markdown, markdown, err), 0);
    EXPECT_GT(nlohmann::json::parse(json.str()).size(), 5u) << what;
    EXPECT_NE(markdown.str().find("|---|"), std::string::npos) << what;
  }
  std::ostringstream err;
  EXPECT_EQ(commands::list("fish", commands::Form::text, err, err), 64);
}

}  // namespace
}  // namespace tidewright
