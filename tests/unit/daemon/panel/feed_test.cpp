#include "daemon/panel/feed.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <thread>

namespace tidewright::panel {
namespace {

using namespace std::chrono_literals;
using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;

Parts two(const std::string& a, const std::string& b) {
  return {{"a", "<section id=\"a\">" + a + "</section>"},
          {"b", "<section id=\"b\">" + b + "</section>"}};
}

std::string id_of(const std::string& event) {
  const std::size_t at = event.find("id: ") + 4;
  return event.substr(at, event.find('\n', at) - at);
}

class PanelFeed : public ::testing::Test {
 protected:
  std::string next(std::uint64_t& position) { return *feed.next(position, 10s); }
  std::string next_of(const std::string& id) {
    std::uint64_t position = feed.position(id);
    return next(position);
  }
  Feed feed{0xabc};
};

TEST_F(PanelFeed, SendsASnapshotFirstThenWhatChanged) {
  feed.publish(two("one", "two"), "As of 1");
  std::uint64_t position = feed.position("");
  const std::string first = next(position);
  EXPECT_THAT(first, StartsWith("event: snapshot\n"));
  EXPECT_THAT(first, HasSubstr("id=\"a\">one"));
  EXPECT_THAT(first, HasSubstr("id=\"b\">two"));
  feed.publish(two("one", "three"), "As of 2");
  const std::string second = next(position);
  EXPECT_THAT(second, StartsWith("event: change\n"));
  EXPECT_THAT(second, Not(HasSubstr("one")));
  EXPECT_THAT(second, HasSubstr("three"));
  EXPECT_THAT(second, HasSubstr("As of 2"));
}

// As the HTML standard (9.2.6) wants an event: fields in lines, closed by an empty one.
TEST_F(PanelFeed, WritesEachEventInOneLineOfData) {
  feed.publish(two("one", "two"), "now");
  const std::string event = next_of("");
  EXPECT_TRUE(event.ends_with("\n\n"));
  EXPECT_EQ(event.find("\n\n"), event.size() - 2);
  EXPECT_EQ(event.find("data: "), event.rfind("\ndata: ") + 1);
}

TEST_F(PanelFeed, GoesOnWhereAPageStoodAndLosesNothing) {
  feed.publish(two("1", ""), "");
  const std::string seen = id_of(next_of(""));
  for (int i = 2; i <= 5; ++i) feed.publish(two(std::to_string(i), ""), "");
  std::uint64_t position = feed.position(seen);
  for (int i = 2; i <= 5; ++i) {
    const std::string event = next(position);
    EXPECT_THAT(event, StartsWith("event: change\n"));
    EXPECT_THAT(event, HasSubstr("\">" + std::to_string(i) + "<"));
  }
}

TEST_F(PanelFeed, SendsASnapshotToWhoIsTooFarBehindOrOfAnotherRun) {
  feed.publish(two("0", ""), "");
  const std::string seen = id_of(next_of(""));
  for (std::size_t i = 1; i <= Feed::changes_kept + 1; ++i) {
    feed.publish(two(std::to_string(i), ""), "");
  }
  EXPECT_THAT(next_of(seen), StartsWith("event: snapshot\n"));
  for (const char* id : {"abd-1", "abc-99999", "abc-", "abc-x", "abc", "-1",
                         "abc-18446744073709551616", "abc--1", "abc-1 "}) {
    EXPECT_THAT(next_of(id), StartsWith("event: snapshot\n")) << id;
  }
}

TEST_F(PanelFeed, KeepsSoManyBytesAtMost) {
  const std::string long_text(40 * 1024, 'x');
  feed.publish(two("0", ""), "");
  const std::string seen = id_of(next_of(""));
  for (int i = 1; i <= 4; ++i) feed.publish(two(long_text + std::to_string(i), ""), "");
  EXPECT_THAT(next_of(seen), StartsWith("event: snapshot\n"));
}

TEST_F(PanelFeed, BeatsWhileNothingHappens) {
  feed.publish(two("one", "two"), "As of 3");
  std::uint64_t position = 1;
  const std::string beat = *feed.next(position, 1ms);
  EXPECT_THAT(beat, StartsWith("event: beat\n"));
  EXPECT_THAT(beat, HasSubstr("As of 3"));
  EXPECT_THAT(beat, Not(HasSubstr("section")));
  // Nothing but the time is new: no change is sent.
  feed.publish(two("one", "two"), "As of 4");
  EXPECT_THAT(*feed.next(position, 1ms), StartsWith("event: beat\n"));
}

TEST_F(PanelFeed, WakesWhoWaitsAndSendsThemHomeAtTheEnd) {
  std::uint64_t position = 0;
  std::thread waiting([&] { EXPECT_THAT(next(position), StartsWith("event: snapshot\n")); });
  feed.publish(two("one", "two"), "");
  waiting.join();
  std::thread last([&] { EXPECT_EQ(feed.next(position, 60s), nullptr); });
  feed.close();
  last.join();
}

}  // namespace
}  // namespace tidewright::panel
