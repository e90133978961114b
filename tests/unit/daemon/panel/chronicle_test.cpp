#include "daemon/panel/chronicle.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/rooms.hpp"
#include "tests/support/stage.hpp"

namespace tidewright::panel {
namespace {

using namespace std::chrono_literals;
using ::testing::HasSubstr;
using ::testing::Not;

class PanelChronicle : public ::testing::Test {
 protected:
  void see() { chronicle.see(stage.room, stage.state); }
  std::string story() const { return chronicle.story(Style(config::Panel{})); }

  support::Stage stage;
  Chronicle chronicle;
};

TEST_F(PanelChronicle, IsEmptyAtFirst) { EXPECT_THAT(story(), HasSubstr("Nothing has been")); }

TEST_F(PanelChronicle, TellsWhatWasSwitchedAndWhyTheNewestFirst) {
  stage.begin();
  see();
  stage.wait(5min);
  ASSERT_TRUE(stage.is_on());
  see();
  stage.says(support::floor, 1);
  see();
  const std::string html = story();
  const std::size_t started = html.find("The daemon started."), on = html.find("switched ON"),
                    off = html.find("switched OFF"), leak = html.find("Water on the floor");
  EXPECT_LT(off, on);
  EXPECT_LT(leak, on);
  EXPECT_LT(on, started);
  EXPECT_NE(started, html.npos);
  EXPECT_THAT(html, HasSubstr("below start at 80 L"));  // the numbers of the decision
  EXPECT_THAT(html, HasSubstr("says wet"));
}

TEST_F(PanelChronicle, SaysNothingTwiceAndKeepsSoManyAtMost) {
  stage.begin();
  see();
  const std::string before = story();
  stage.wait(1min);
  see();
  EXPECT_EQ(std::count(before.begin(), before.end(), '<'), [&] {
    const std::string after = story();
    return std::count(after.begin(), after.end(), '<');
  }());
  for (std::size_t i = 0; i < 2 * Chronicle::entries_most; ++i) {
    stage.state.drives[0].on = !stage.state.drives[0].on;
    see();
  }
  const std::string html = story();
  std::size_t entries = 0;
  for (std::size_t at = html.find("<li"); at != html.npos; at = html.find("<li", at + 1)) ++entries;
  EXPECT_EQ(entries, Chronicle::entries_most);
  EXPECT_THAT(html, Not(HasSubstr("The daemon started.")));
}

}  // namespace
}  // namespace tidewright::panel
