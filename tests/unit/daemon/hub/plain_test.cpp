#include "daemon/hub/plain.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <limits>
#include <sstream>

namespace tidewright::hub {
namespace {

using report::Report;
using report::Thing;
using report::Unknown;
using List = std::vector<std::string>;

// 2026-03-01 06:30:00 UTC, one hour east of it (`date -u -d '2026-03-01 06:30' +%s`).
const Instant now{std::chrono::seconds{1'772'346'600}};
const WallClock wall{Duration{0}, std::chrono::minutes{60}};
const Place place{"tidewright", "waterroom"};

Report report_of(std::vector<Thing> things) { return {now, wall, std::move(things)}; }

std::string written(const std::vector<Message>& messages) {
  std::string text;
  for (const Message& message : messages) {
    text += (message.retained ? "retained " : "") + message.topic + "\n" + message.payload + "\n";
  }
  return text;
}

// The files are written by hand from what the outside is promised, not by this program.
std::string golden(const std::string& name) {
  std::ifstream file(TIDEWRIGHT_SOURCE_DIR "/tests/golden/plain/" + name + ".txt");
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

TEST(Plain, PublishesAVat) {
  const Thing vat{"vat",
                  "pure",
                  {{"volume_l", 121.5},
                   {"fill_percent", 60.75, 0},
                   {"rate_l_h", 7.3},
                   {"full_at", "2026-03-01T15:31:00+01:00"},
                   {"state", "filling"},
                   {"ready", false},
                   {"ready_at", Unknown{}},
                   {"waiting_for", List{"121.5 L of 150 L", "product water at or below 1 ppm"}},
                   {"days_of_top_off", 12.15},
                   {"quality", "good"},
                   {"why", "below start"}}};
  EXPECT_EQ(written(plain(report_of({vat}), place)), golden("vat"));
}

TEST(Plain, PublishesWhatIsUnknownAsNullAndWhatIsEmptyAsNothing) {
  const Thing purifier{"purifier",
                       "",
                       {{"state", "running"},
                        {"feed_tds_ppm", 318.0},
                        {"permeate_tds_ppm", std::numeric_limits<double>::quiet_NaN()},
                        {"permeate_tds_ppm_why", "there is no meter"},
                        {"product_tds_ppm", -0.04},
                        {"waiting_for", List{}},
                        {"note", ""}}};
  EXPECT_EQ(written(plain(report_of({purifier}), place)), golden("purifier"));
}

TEST(Plain, PublishesWhetherASourceIsOnline) {
  const Thing floor{"source",
                    "floor",
                    {{"online", true}, {"wet", false}, {"quality", "good"}, {"refused", 3.0, 0}}};
  const Thing air{"source", "room_air", {{"online", false}, {"temperature_c", Unknown{}}}};
  EXPECT_EQ(written(plain(report_of({floor, air}), place)), golden("source"));
}

TEST(Plain, EscapesTextInsideJsonOnly) {
  const Thing leak{"alarm",
                   "leak",
                   {{"state", "latched_unacknowledged"},
                    {"priority", 1.0, 0},
                    {"occurrence", 12.0, 0},
                    {"since", "2026-03-01T07:29:58+01:00"},
                    {"why", "\"the floor\" says wet: 100 \u00b5S?"},
                    {"respond_within_min", 30.0, 0}}};
  EXPECT_EQ(written(plain(report_of({leak}), place)), golden("alarm"));
}

TEST(Plain, AnnouncesWithoutRetaining) {
  const report::Message announcement{
      now - std::chrono::seconds{2},        1, "leak", 12, "raised", "Water on the floor",
      "Shut the feed cock.\nDry the floor."};
  EXPECT_EQ(written({plain(announcement, place, wall)}), golden("announcement"));
}

TEST(Plain, TheSameRoomAMinuteLaterIsNoChange) {
  const Thing ledger{"ledger", "", {{"made_total_l", 812.0}}};
  Report later = report_of({ledger});
  later.at += std::chrono::minutes{1};
  const auto before = plain(report_of({ledger}), place);
  EXPECT_NE(plain(later, place).front().payload, before.front().payload);
  EXPECT_TRUE(changes(before, plain(later, place)).empty());
}

}  // namespace
}  // namespace tidewright::hub
