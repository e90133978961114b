// Which announcement goes which way, and when: by its priority and the hours of the night.
#include "daemon/alerts/compose.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "core/report/report.hpp"
#include "tests/support/rooms.hpp"

namespace tidewright::alerts {
namespace {

using namespace std::chrono_literals;
using room::RuleId;

const room::Hours night{22 * 60, 7 * 60};
const Instant midnight{std::chrono::days{20'000}};

// A household with both ways, and an alarm that was raised at 23:00 of its own time.
struct Home {
  Home() {
    household.room = support::minimal_room();
    household.alerts.webhook = config::Webhook{"https://phone.home/a", "", ""};
    household.alerts.mail = config::Mail{};
    state.circumstances.now = midnight + 23h;
  }
  std::vector<Composed> told(RuleId alarm, Announced event = Announced::raised) {
    const Why why = alarm == RuleId::leak ? Why::wet : Why::level_below;
    return compose(household, state,
                   {5, state.circumstances.now, alarm, 3, event, {why, 0, {50, 60, 2}}}, "abc");
  }
  config::Household household;
  State state;
};

std::vector<post::Way> ways_of(const std::vector<Composed>& all) {
  std::vector<post::Way> ways;
  ways.reserve(all.size());
  for (const Composed& each : all) ways.push_back(each.letter.way);
  return ways;
}

TEST(Compose, TheLetterSaysWhatTheAnnouncementSays) {
  Home home;
  const auto all = home.told(RuleId::leak);
  ASSERT_EQ(all.size(), 2u);
  EXPECT_EQ(all[0].letter.notice, "abc-5");
  EXPECT_EQ(all[1].letter.notice, "abc-5");
  const auto body = nlohmann::json::parse(all[0].letter.body);
  EXPECT_EQ(body.at("notice"), "abc-5");
  EXPECT_EQ(body.at("alarm"), "leak");
  EXPECT_EQ(body.at("occurrence"), 3);
  EXPECT_EQ(body.at("event"), "raised");
  EXPECT_EQ(body.at("priority"), 1);
  EXPECT_EQ(body.at("title"), "Water on the floor");
  const auto message = report::message(home.household.room, home.state,
                                       {RuleId::leak, 3, Announced::raised, {Why::wet, 0, {}}});
  EXPECT_EQ(body.at("text"), message.text);
}

TEST(Compose, PriorityDecidesTheWay) {
  using enum post::Way;
  Home home;
  home.household.alerts.webhook->alarms = config::Alarms::urgent;
  home.household.alerts.mail->alarms = config::Alarms::soon;
  EXPECT_THAT(ways_of(home.told(RuleId::leak)), testing::ElementsAre(webhook, mail));
  EXPECT_THAT(ways_of(home.told(RuleId::vat_cleaning_due)), testing::IsEmpty());  // for the days
  EXPECT_THAT(ways_of(home.told(RuleId::level_lost)), testing::ElementsAre(mail));
  EXPECT_THAT(ways_of(home.told({}, Announced::test)), testing::ElementsAre(webhook, mail))
      << "a test tries every way";
  home.household.alerts.webhook.reset();
  EXPECT_THAT(ways_of(home.told(RuleId::leak)), testing::ElementsAre(mail));
}

TEST(Compose, NobodyIsDisturbedButForWhatIsUrgent) {
  Home home;
  home.household.alerts.do_not_disturb = night;
  EXPECT_EQ(home.told(RuleId::leak).front().not_before, midnight + 23h);
  EXPECT_EQ(home.told(RuleId::leak, Announced::cleared).front().not_before, midnight + 23h);
  EXPECT_EQ(home.told({}, Announced::test).front().not_before, midnight + 23h);
  EXPECT_EQ(home.told(RuleId::vat_low).front().not_before, midnight + 24h + 7h);
  EXPECT_EQ(home.told(RuleId::level_lost).front().not_before, midnight + 24h + 7h);
}

TEST(Compose, OnlyAReminderIsReplacedByTheNext) {
  Home home;
  EXPECT_EQ(home.told(RuleId::leak).front().of, "");
  EXPECT_EQ(home.told(RuleId::leak, Announced::cleared).front().of, "");
  EXPECT_EQ(home.told(RuleId::leak, Announced::reminder).front().of, "leak 3");
}

TEST(Compose, TheHoursEndInTheHouseholdsOwnTime) {
  const WallClock east{.ahead = 0ms, .zone = 120min};
  EXPECT_EQ(end_of(night, midnight + 20h, east), midnight + 29h) << "22:00 there, until 7:00 there";
  EXPECT_EQ(end_of(night, midnight + 20h - 1ms, east), midnight + 20h - 1ms);
  EXPECT_EQ(end_of(night, midnight + 29h - 1ms, east), midnight + 29h);
  EXPECT_EQ(end_of(night, midnight + 29h, east), midnight + 29h);
  const room::Hours siesta{13 * 60, 15 * 60};
  EXPECT_EQ(end_of(siesta, midnight + 14h, {}), midnight + 15h);
  EXPECT_EQ(end_of(siesta, midnight + 15h, {}), midnight + 15h);
  EXPECT_EQ(end_of(siesta, midnight + 12h, {}), midnight + 12h);
}

}  // namespace
}  // namespace tidewright::alerts
