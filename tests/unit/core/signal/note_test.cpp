// What the daemon says of itself is noted, each word of it.
#include "core/signal/note.hpp"

#include <gtest/gtest.h>

namespace tidewright::signal {
namespace {

using namespace std::chrono_literals;

const Instant noon{1000h};

struct Note : testing::Test {
  void at(Instant now, decltype(Event::what) what) { note({now, what}, known); }
  state::Circumstances known;
};

TEST_F(Note, AStartBeginsAnew) {
  known.link_up = true;
  known.link_since = noon - 5h;
  known.recording = false;
  known.stopping = true;
  known.delivery[0] = 16;
  at(noon, Started{.clean = false, .away = 10min, .readable = false});
  EXPECT_EQ(known.started, noon);
  EXPECT_TRUE(known.unclean);
  EXPECT_TRUE(known.unreadable);
  EXPECT_EQ(known.away, 10min);
  EXPECT_EQ(known.unheard_since, long_ago);
  EXPECT_FALSE(known.link_up);
  EXPECT_EQ(known.link_since, noon);
  EXPECT_TRUE(known.recording);
  EXPECT_FALSE(known.stopping);
  EXPECT_EQ(known.delivery[0], 0);
}

TEST_F(Note, ACleanStartKnowsSinceWhenNothingWasHeard) {
  at(noon, Started{.clean = true, .away = 10min, .readable = true});
  EXPECT_FALSE(known.unclean);
  EXPECT_FALSE(known.unreadable);
  EXPECT_EQ(known.unheard_since, noon - 10min);
}

TEST_F(Note, TheLineIsUpOrDownSinceItBecameSo) {
  at(noon, Link{true});
  at(noon + 1min, Link{true});
  EXPECT_TRUE(known.link_up);
  EXPECT_EQ(known.link_since, noon);
  EXPECT_NE(known.unheard_since, noon);
  at(noon + 2min, Link{false});
  EXPECT_FALSE(known.link_up);
  EXPECT_EQ(known.link_since, noon + 2min);
  EXPECT_EQ(known.unheard_since, noon + 2min) << "until then it was heard";
  at(noon + 3min, Link{false});
  EXPECT_EQ(known.link_since, noon + 2min);
  EXPECT_EQ(known.unheard_since, noon + 2min);
}

TEST_F(Note, TimeDoesNotRunBackwards) {
  at(noon, Tick{});
  at(noon - 1h, Tick{});
  EXPECT_EQ(known.now, noon);
}

TEST_F(Note, TheRestAsItIsSaid) {
  at(noon, ClockSet{{.ahead = 5s, .zone = 60min}});
  EXPECT_EQ(known.wall.ahead, 5s);
  EXPECT_EQ(known.wall.zone, 60min);
  at(noon, Recorded{false});
  EXPECT_FALSE(known.recording);
  at(noon, Delivery{.actuator = 1, .on = true, .code = 16});
  EXPECT_EQ(known.delivery[1], 16);
  EXPECT_EQ(known.delivery[0], 0);
  at(noon, Stopping{});
  EXPECT_TRUE(known.stopping);
}

}  // namespace
}  // namespace tidewright::signal
