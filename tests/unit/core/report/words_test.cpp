#include <gtest/gtest.h>

#include <set>

#include "core/report/phrases.hpp"
#include "core/report/report.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;

room::Room a_room() {
  room::Room room;
  room::Instrument floor;
  floor.id = "floor";
  floor.quantity = room::Quantity::wetness;
  floor.where = "the floor by the drain";
  room.instruments.push_back(floor);
  room::Actuator booster;
  booster.id = "booster";
  room.actuators.push_back(booster);
  room.vat = room::Vat{};
  room.vat->id = "pure";
  return room;
}

TEST(Words, EachCodeHasItsOwnSentenceWithItsPiecesFilledIn) {
  const room::Room room = a_room();
  std::set<std::string> sentences;
  for (int code = 0; code <= static_cast<int>(Why::value_out_of_range); ++code) {
    const std::string text = report::words(room, {static_cast<Why>(code), 0, {1, 2, 3}});
    EXPECT_FALSE(text.empty()) << "code " << code;
    EXPECT_EQ(text.find_first_of("{}"), std::string::npos) << text;
    EXPECT_NE(text.back(), '.') << text;
    EXPECT_TRUE(sentences.insert(text).second) << text;
  }
}

TEST(Words, SayThingsNumbersAndTimesAsAPersonWould) {
  const room::Room room = a_room();
  EXPECT_EQ(report::words(room, {Why::wet, 0, {}}),
            "the leak sensor (the floor by the drain) says wet");
  EXPECT_EQ(report::words(room, {Why::reached_stop, no_subject, {180.4F, 180, 300}}),
            "the pure vat holds 180 L, at or above stop at 180 L");
  EXPECT_EQ(report::words(room, {Why::off_not_obeyed, 0, {17}}),
            "the booster pump was sent OFF less than a minute ago and still says ON");
  EXPECT_EQ(report::words(room, {Why::latched, no_subject, {0}}),
            "held off by the alarm leak until a person resets it");
  EXPECT_EQ(report::words(room, {Why::armed, no_subject, {483920}}),
            "ready to reset: confirm within 30 s with the token 483920");
}

TEST(Words, WhatGrowsChangesAtMostOnceAMinute) {
  // A published text that counted seconds would be published every second.
  const room::Room room = a_room();
  for (const Why why : {Why::never_seen, Why::stale, Why::sensor_lost, Why::level_unusable,
                        Why::runs_after_off, Why::off_not_obeyed, Why::link_down}) {
    std::set<std::string> texts;
    for (int second = 0; second < 600; ++second) {
      texts.insert(report::words(room, {why, 0, {static_cast<float>(second), 180}}));
    }
    EXPECT_EQ(texts.size(), 10u) << *texts.begin();
  }
}

TEST(Phrases, WhatGrowsIsToldInWholeMinutes) {
  EXPECT_EQ(report::growing(59s), "less than a minute");
  EXPECT_EQ(report::growing(119s), "1 min");
  EXPECT_EQ(report::growing(120s), "2 min");
  EXPECT_EQ(report::growing(2h + 59s), "2 h");
}

TEST(Words, SurviveASubjectThatIsNotThere) {
  EXPECT_FALSE(report::words(room::Room{}, {Why::wet, 7, {}}).empty());
  EXPECT_FALSE(report::words(room::Room{}, {Why::off_not_obeyed, no_subject, {}}).empty());
  EXPECT_FALSE(report::words(room::Room{}, {Why::latched, no_subject, {99}}).empty());
}

TEST(Phrases, NumbersKeepOneDecimalAtMost) {
  EXPECT_EQ(report::number(96.24), "96.2");
  EXPECT_EQ(report::number(95), "95");
  EXPECT_EQ(report::number(99.97), "100");
  EXPECT_EQ(report::number(-0.01), "0");
}

TEST(Phrases, TimesAreRoundedToWhatMatters) {
  EXPECT_EQ(report::lasting(45s), "45 s");
  EXPECT_EQ(report::lasting(12min + 20s), "12 min");
  EXPECT_EQ(report::lasting(3h + 20min), "3 h 20 min");
  EXPECT_EQ(report::lasting(24h), "24 h");
  EXPECT_EQ(report::lasting(96h), "4 days");
}

// The examples of RFC 3339, 5.8 (its fractions of seconds left out).
TEST(WallTime, IsIso8601WithTheHouseholdsOffset) {
  // 1985-04-12T23:20:50Z is 482196050 s after 1970.
  EXPECT_EQ(report::wall_time(Instant{482196050s}, {}), "1985-04-12T23:20:50+00:00");
  // 1996-12-19T16:39:57-08:00 is 851042397 s.
  EXPECT_EQ(report::wall_time(Instant{851042397s}, {0s, -8h}), "1996-12-19T16:39:57-08:00");
  // 1937-01-01T12:00:27+00:20 is -1041337173 s: reached by a wall clock that is far behind.
  EXPECT_EQ(report::wall_time(Instant{1000s}, {-1041338173s, 20min}), "1937-01-01T12:00:27+00:20");
}

}  // namespace
}  // namespace tidewright
