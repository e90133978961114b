// The phone texts. Each is printed; one who knows only the text must be able to say what happened,
// what the daemon did, what to do and by when.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include "core/report/report.hpp"
#include "core/rules/catalogue.hpp"
#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using room::RuleId;
using support::Stage;

report::Message told(const Stage& stage, RuleId id) {
  for (const Announcement& announcement : stage.announcements) {
    if (announcement.alarm == id) return report::message(stage.room, stage.state, announcement);
  }
  ADD_FAILURE() << rules::rule(id).name << " was not announced";
  return {};
}

bool says(const report::Message& message, const std::string& text) {
  return message.text.find(text) != std::string::npos;
}

TEST(Message, ALeakTellsWhereWhatWasDoneWhichCockAndByWhen) {
  Stage stage;
  stage.room.instruments[support::floor].where = "the floor by the drain";
  stage.begin();
  stage.wait(5min);
  stage.says(support::floor, 1);
  const report::Message message = told(stage, RuleId::leak);
  fmt::print("{}\n{}\n", message.title, message.text);
  EXPECT_EQ(message.priority, 1);
  EXPECT_EQ(message.event, "raised");
  EXPECT_TRUE(says(message, "(the floor by the drain) says wet"));
  EXPECT_TRUE(says(message, "switched off"));
  EXPECT_TRUE(says(message, "Close the feed cock"));
  EXPECT_TRUE(says(message, "Time to act: 30 min, until "));
}

TEST(Message, WhereNothingStopsTheWaterItSaysThatItIsStillUnderPressure) {
  Stage stage;
  stage.room.purifier->water_stops_with = room::WaterStopsWith::nothing;
  stage.begin();
  stage.wait(5min);
  stage.says(support::floor, 1);
  EXPECT_TRUE(says(told(stage, RuleId::leak), "still under pressure"));
  stage.room.purifier->water_stops_with = room::WaterStopsWith::valve;
  EXPECT_FALSE(says(told(stage, RuleId::leak), "still under pressure"));
}

TEST(Message, WhereNothingIsSwitchedItDoesNotClaimToHaveDoneAnything) {
  room::Room room = support::minimal_room();
  room.actuators.clear();
  room.purifier.reset();
  room.instruments.pop_back();  // the plug's feedback
  Stage stage(room);
  stage.begin();
  stage.says(support::floor, 1);
  EXPECT_TRUE(says(told(stage, RuleId::leak), "This daemon switches nothing here"));
}

TEST(Message, AReminderSaysSinceWhenAndThatTheLatchOutlivesTheWater) {
  Stage stage;
  stage.begin();
  stage.says(support::floor, 1);
  stage.says(support::floor, 0);
  stage.wait(20min);
  const report::Message over = told(stage, RuleId::leak);
  EXPECT_EQ(over.event, "cleared");
  EXPECT_TRUE(says(over, "Everything stays off until you reset `leak`"));
  stage.wait(10min);
  const report::Message still = told(stage, RuleId::leak);
  EXPECT_EQ(still.event, "reminder");
  EXPECT_EQ(still.title, "Still: Water on the floor");
  EXPECT_TRUE(says(still, "nobody has reset it"));
  EXPECT_TRUE(says(still, "It stands since "));
}

TEST(Message, APlugThatIgnoresOnIsNoFloodAndSaysSo) {
  const Stage stage;
  const report::Message message = report::message(
      stage.room, stage.state,
      {RuleId::actuator_disobeys, 1, Announced::raised, {Why::on_not_obeyed, 0, {}}});
  EXPECT_EQ(message.priority, 2);
  EXPECT_FALSE(says(message, "feed cock"));
  EXPECT_TRUE(says(message, "See whether the plug has power"));
}

TEST(Message, ASpentResinAndABadMembraneAskForDifferentThings) {
  const Stage stage;
  const auto text = [&](Why why) {
    return report::message(stage.room, stage.state,
                           {RuleId::resin_breakthrough, 1, Announced::raised, {why, 0, {2, 1, 96}}})
        .text;
  };
  EXPECT_NE(text(Why::product_resin).find("Rotate the resin"), std::string::npos);
  EXPECT_NE(text(Why::product_membrane).find("Look at the membrane first"), std::string::npos);
  EXPECT_NE(text(Why::product_above_zero).find("measure between"), std::string::npos);
}

TEST(Message, OnceTooOftenSaysThatEverythingIsOffNow) {
  Stage stage;
  stage.begin();
  const Announcement third{
      RuleId::level_lost, 3, Announced::raised, {Why::level_unusable, support::level, {180}}};
  EXPECT_TRUE(says(report::message(stage.room, stage.state, third), "goes on by itself"));
  stage.state.latches[RuleId::level_lost].set = true;
  const report::Message message = report::message(stage.room, stage.state, third);
  EXPECT_TRUE(says(message, "off now and stays off until a person resets `level_lost`"));
  EXPECT_FALSE(says(message, "by itself"));
}

TEST(Message, ASummaryTellsTheFirstWholeAndNamesTheOthers) {
  Stage stage(support::full_room());
  stage.begin();
  Duration later = 0s;
  for (const RuleId id : {RuleId::pump_dry, RuleId::vat_low, RuleId::store_failed}) {
    stage.state.alarms[id].active = true;
    stage.state.alarms[id].since = stage.state.circumstances.now - 1min + (later += 1s);
  }
  const report::Message message =
      report::message(stage.room, stage.state,
                      {RuleId::pump_dry, 1, Announced::summary, {Why::no_power, 0, {1, 5, 90}}});
  fmt::print("{}\n{}\n", message.title, message.text);
  EXPECT_EQ(message.event, "summary");
  EXPECT_EQ(message.title, "3 alarms within 10 min");
  EXPECT_TRUE(says(message, "draws 1 W"));
  EXPECT_TRUE(says(message, "Time to act"));
  EXPECT_TRUE(says(message, "Little pure water is left. The disk does not record."));
}

TEST(Message, TheDigestNamesWhatStandsWhatIsHiddenAndWhatWasMade) {
  Stage stage(support::full_room());
  stage.begin();
  const Instant now = stage.state.circumstances.now;
  state::Alarm& lost = stage.state.alarms[RuleId::level_lost];
  lost.active = true;
  lost.since = now - 72h;
  lost.why = {Why::level_unusable, support::level, {3 * 86400}};
  state::Alarm& stock = stage.state.alarms[RuleId::stock_low];
  stock.active = true;
  stock.since = now - 48h;
  stock.why = {Why::stock_below, 0, {7, 10}};
  state::Alarm& shelved = stage.state.alarms[RuleId::pump_dry];
  shelved.suppression = state::Suppression::shelved;
  shelved.shelved_until = now + 1h;
  stage.state.digest.made = Litres{96};
  const report::Message message =
      report::message(stage.room, stage.state, {{}, 0, Announced::digest, {}});
  fmt::print("{}\n{}\n", message.title, message.text);
  EXPECT_EQ(message.id, "digest");
  EXPECT_EQ(message.event, "digest");
  EXPECT_EQ(message.priority, 3);
  EXPECT_TRUE(says(message, "have stood for too long"));
  EXPECT_TRUE(says(message, "The vat's gauge is lost, for 3 days"));
  EXPECT_TRUE(says(message, "only 7 kg of sea salt are left; order below 10 kg"));
  EXPECT_TRUE(says(message, "The pump does not work (`pump_dry`): shelved until "));
  EXPECT_TRUE(says(message, "96 L of pure water were made this week."));
}

TEST(Message, ATestSaysThatItIsOne) {
  const Stage stage;
  const report::Message message =
      report::message(stage.room, stage.state, {RuleId::leak, 0, Announced::test, {}});
  EXPECT_EQ(message.id, "test");
  EXPECT_NE(message.text.find("Nothing has happened"), std::string::npos);
}

TEST(Message, EveryAlarmHasATextThatEndsItsSentences) {
  const Stage stage(support::full_room());
  for (const rules::Rule* rule : rules::catalogue) {
    for (const auto event : {Announced::raised, Announced::reminder, Announced::cleared}) {
      const report::Message message =
          report::message(stage.room, stage.state, {rule->id, 1, event, {Why::wet, 0, {}}});
      EXPECT_EQ(message.id, rule->name);
      EXPECT_EQ(message.text.back(), '.');
      EXPECT_EQ(message.text.find(".."), std::string::npos) << message.text;
      EXPECT_LT(message.text.size(), 700u) << message.text;  // a phone shows no more at once
    }
  }
}

}  // namespace
}  // namespace tidewright
