// Cookies: RFC 6265, 4.2.1.
#include "daemon/panel/form.hpp"

#include <gtest/gtest.h>

namespace tidewright::panel {
namespace {

TEST(PanelForm, FindsACookieByItsWholeName) {
  EXPECT_EQ(cookie("a=1; session=xyz; b=2", "session"), "xyz");
  EXPECT_EQ(cookie("session=xyz", "session"), "xyz");
  EXPECT_EQ(cookie("a=1;session=", "session"), "");
  for (const char* header : {"", ";", "sessions=xyz", "mysession=xyz", "session", "a=session=xyz",
                             ";;; ", "Session=xyz"}) {
    EXPECT_EQ(cookie(header, "session"), "") << header;
  }
}

TEST(PanelForm, FindsAFieldOrNothing) {
  EXPECT_EQ(field({{"a", "1"}}, "a"), "1");
  EXPECT_EQ(field({{"a", "1"}}, "b"), "");
}

TEST(PanelForm, TakesAPointAndACommaAndLeavesTheRestToTheDesk) {
  EXPECT_EQ(number_in_json("0.4"), "0.4");
  EXPECT_EQ(number_in_json("0,4"), "0.4");
  EXPECT_EQ(number_in_json(" 12 "), "12");
  EXPECT_EQ(number_in_json("-3"), "-3");
  EXPECT_EQ(number_in_json("4294967295"), "4294967295");
  for (const char* none :
       {"", " ", "x", "1 2", "1,2,3", "nan", "inf", "0x10", "1e5", "+1", "--1"}) {
    EXPECT_EQ(number_in_json(none), "\"" + std::string(none) + "\"");
  }
  EXPECT_EQ(number_in_json("\"}"), R"("\"}")");
}

}  // namespace
}  // namespace tidewright::panel
