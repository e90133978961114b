#include "daemon/intake/topics.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <malloc.h>

#include <charconv>

namespace tidewright::intake {
namespace {

using testing::ElementsAre;
using Kind = Target::Kind;

config::Source source(std::string topic) {
  config::Source made;
  made.topic = std::move(topic);
  return made;
}

TEST(Topics, OneTopicMaySpeakOfSeveralInstruments) {
  config::Household household;
  household.sources = {source("home/plug/sensor"), source("home/leak"), source("home/plug/sensor")};
  household.sources[1].availability = {"home/leak/status", "online", "offline"};
  const Topics topics(household);

  EXPECT_THAT(topics.find("home/plug/sensor"),
              ElementsAre(Target{Kind::reading, 0}, Target{Kind::reading, 2}));
  EXPECT_THAT(topics.find("home/leak"), ElementsAre(Target{Kind::reading, 1}));
  EXPECT_THAT(topics.find("home/leak/status"), ElementsAre(Target{Kind::availability, 1}));
  EXPECT_TRUE(topics.find("home").empty());
  EXPECT_TRUE(topics.find("").empty());
  EXPECT_THAT(topics.subscriptions(),
              ElementsAre("home/plug/sensor", "home/leak", "home/leak/status"));
}

TEST(Topics, AMillionStrangeTopicsTakeNoMemory) {
  config::Household household;
  household.sources = {source("home/leak")};
  const Topics topics(household);
  const std::string begin = "home/some-topic-that-is-too-long-to-stand-in-a-string-itself/";
  std::string strange = begin + "1000000";
  std::size_t found = 0;
  const auto before = mallinfo2().uordblks;
  for (int i = 0; i < 1'000'000; ++i) {
    std::to_chars(strange.data() + begin.size(), strange.data() + strange.size(), i);
    found += topics.find(strange).size();
  }
  EXPECT_EQ(mallinfo2().uordblks, before);
  EXPECT_EQ(found, 0U);
  EXPECT_EQ(topics.find("home/leak").size(), 1U);
}

}  // namespace
}  // namespace tidewright::intake
