#include "daemon/hub/message.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tidewright::hub {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

Message dated(const std::string& at, const std::string& content) {
  const std::size_t from = at.size();
  return {"room/vat/pure", at + content, true, from};
}

TEST(Changes, AFreshBrokerGetsEverything) {
  const std::vector<Message> all{{"a", "1"}, {"b", "2"}};
  EXPECT_EQ(changes({}, all), all);
}

TEST(Changes, OnlyWhatDiffersIsPublishedAndInItsOrder) {
  const std::vector<Message> before{{"a", "1"}, {"b", "2"}, {"c", "3"}};
  const std::vector<Message> after{{"c", "4"}, {"b", "2"}, {"a", "0"}};
  EXPECT_THAT(changes(before, after), ElementsAre(Message{"c", "4"}, Message{"a", "0"}));
}

TEST(Changes, TimeAloneIsNoChange) {
  EXPECT_THAT(changes({dated("at 10:00", " 96 L")}, {dated("at 10:05", " 96 L")}), IsEmpty());
  EXPECT_THAT(changes({dated("at 10:00", " 96 L")}, {dated("at 10:00", " 97 L")}),
              ElementsAre(dated("at 10:00", " 97 L")));
}

TEST(Changes, WhatIsGoneIsClearedByAnEmptyRetainedMessage) {
  const std::vector<Message> before{{"a", "1"}, {"b", "2"}, {"told", "once", false}};
  EXPECT_THAT(changes(before, {{"b", "2"}}), ElementsAre(Message{"a", "", true}));
}

}  // namespace
}  // namespace tidewright::hub
