#include "daemon/intake/topics.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

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

}  // namespace
}  // namespace tidewright::intake
