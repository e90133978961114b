// What stands on the page in each condition of the room; lived by the real step() on a stage.
#include "daemon/panel/page.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <regex>

#include "core/rules/catalogue.hpp"
#include "tests/support/rooms.hpp"
#include "tests/support/stage.hpp"

namespace tidewright::panel {
namespace {

using namespace std::chrono_literals;
using support::Stage;
using ::testing::HasSubstr;
using ::testing::Not;

class PanelPage : public ::testing::Test {
 protected:
  Parts all() {
    household.room = stage.room;
    const report::Report report = report::describe(stage.room, stage.state);
    const std::vector<Standing> alarms = standing(stage.room, stage.state, report);
    const Style style(look);
    return parts({household, report, alarms, style, report::wall_time(report.at, report.wall)});
  }
  std::string part(const std::string& id) {
    for (const Part& one : all()) {
      if (one.id == id) return one.html;
    }
    return {};
  }
  std::string everything() {
    std::string html;
    for (const Part& one : all()) html += one.html;
    return html;
  }

  Stage stage;
  config::Household household;
  config::Panel look;
};

// Every tag that opens is closed, in order; and nothing of it needs what the policy forbids.
void expect_sound(const std::string& html) {
  std::vector<std::string> open;
  const std::regex tag("<(/?)([a-zA-Z0-9]+)([^>]*)>");
  for (std::sregex_iterator at(html.begin(), html.end(), tag), end; at != end; ++at) {
    if (at->str(3).ends_with("/")) continue;
    if (at->str(1).empty()) {
      open.push_back(at->str(2));
    } else {
      ASSERT_FALSE(open.empty()) << at->str();
      EXPECT_EQ(open.back(), at->str(2));
      open.pop_back();
    }
    EXPECT_FALSE(std::regex_search(at->str(3), std::regex("\\s(style|on[a-z]+)=")));
  }
  EXPECT_TRUE(open.empty());
  EXPECT_EQ(html.find('\n'), html.npos);
}

// A page that was opened in the first moment must have a place for each part that is swapped in.
TEST_F(PanelPage, BeforeTheFirstReportItSaysSoAndHasEveryPlace) {
  const Parts first = parts_at_start(Style(look));
  const Parts later = all();
  ASSERT_EQ(first.size(), later.size());
  std::string html;
  for (std::size_t i = 0; i < first.size(); ++i) {
    EXPECT_EQ(first[i].id, later[i].id);
    html += first[i].html;
  }
  EXPECT_THAT(html, HasSubstr("<h1>Just started: nothing has been heard yet.</h1>"));
  expect_sound(html);
}

TEST_F(PanelPage, WaitsForFirstReadings) {
  stage.happen(Started{.clean = true});
  EXPECT_THAT(part("sentence"), HasSubstr("Waiting for the first readings."));
  EXPECT_THAT(part("sentence"), HasSubstr("0 of 6 instruments"));
  expect_sound(everything());
}

// 60 L are there, 80 L are enough.
TEST_F(PanelPage, SaysHowMuchIsMissing) {
  stage.begin();
  EXPECT_THAT(part("sentence"), HasSubstr("Not yet: 20 L to go"));
  EXPECT_THAT(part("sentence"), HasSubstr("class=\"waiting\""));
  EXPECT_THAT(part("running"), HasSubstr("<span>The booster pump</span>: off.</strong>"));
  stage.wait(5min);
  EXPECT_THAT(part("running"), HasSubstr("<span>The booster pump</span>: runs.</strong>"));
  EXPECT_THAT(part("running"), HasSubstr("below start at 80 L"));
  EXPECT_THAT(part("path"), HasSubstr("<ol class=\"moving\">"));
  expect_sound(everything());
}

TEST_F(PanelPage, SaysWhatIsReady) {
  stage.begin();
  stage.says(support::level, 190);
  stage.says(support::level, 190);
  stage.wait(2min);
  EXPECT_THAT(part("sentence"), HasSubstr("Ready: 190 L of pure water."));
  EXPECT_THAT(part("sentence"), HasSubstr("class=\"ready\""));
  look.us_units = true;
  // NIST SP 811: 190 L are 50.2 US gallons.
  EXPECT_THAT(part("sentence"), HasSubstr("Ready: 50.2 gal of pure water."));
  look.us_units = false;
  look.language = config::Language::german;
  EXPECT_THAT(part("sentence"), HasSubstr("Bereit: 190 L pure water."));
}

TEST_F(PanelPage, PutsALeakInPlaceOfEverythingWithItsRecordsAction) {
  stage.begin();
  stage.says(support::floor, 1);
  const std::string html = part("sentence");
  const rules::Rule& leak = rules::rule(room::RuleId::leak);
  EXPECT_THAT(html, HasSubstr("class=\"urgent\""));
  EXPECT_THAT(html, HasSubstr("<h1>" + std::string(leak.title) + " since "));
  EXPECT_THAT(html, HasSubstr("Close the feed cock"));
  EXPECT_THAT(html, HasSubstr("Time to act: "));
  EXPECT_THAT(html, Not(HasSubstr("Not yet")));
  expect_sound(everything());
  look.language = config::Language::german;
  EXPECT_THAT(part("sentence"), HasSubstr("<h1>Wasser am Boden seit "));
  expect_sound(everything());
}

TEST_F(PanelPage, ShowsWhatIsNotKnownAsADashWithItsReasonNeverAsNothing) {
  stage.begin();
  while (part("path").find(">60 L<") != std::string::npos) {
    ASSERT_LT(stage.state.circumstances.now - stage.state.circumstances.started, 1h);
    stage.wait_without(support::level, 10s);
  }
  EXPECT_THAT(part("path"), HasSubstr("<span class=\"name\">vat</span> <span class=\"figure\">—"));
  EXPECT_THAT(part("path"), HasSubstr("Silent for "));
  EXPECT_THAT(part("path"), Not(HasSubstr(">0 L<")));
  EXPECT_THAT(part("vessel"), HasSubstr(">—</text>"));
  EXPECT_THAT(part("vessel"), Not(HasSubstr("class=\"water\"")));
  EXPECT_THAT(part("sentence"), HasSubstr("<h1>The vat&#39;s gauge is lost since "));
  // Somebody has seen it: it makes room for what was asked of the page, and stands below.
  stage.happen(
      Ask{.kind = AskKind::acknowledge, .alarm = room::RuleId::level_lost, .occurrence = 1});
  EXPECT_THAT(part("sentence"), HasSubstr("<h1>Not known: how much water there is.</h1>"));
  EXPECT_THAT(part("sentence"), HasSubstr("<li><strong>The vat&#39;s gauge is lost</strong>: "));
}

TEST_F(PanelPage, NamesThePlaceInTroubleByShapeAndWord) {
  stage.begin();
  stage.wait_without(support::level, 2h);
  EXPECT_THAT(part("path"), HasSubstr("class=\"trouble\""));
  EXPECT_THAT(part("path"), HasSubstr("▲</span>look here: Silent for "));
}

TEST_F(PanelPage, DrawsTheWaterLineAndTheMarks) {
  stage.begin();
  const std::string html = part("vessel");
  EXPECT_THAT(html, HasSubstr(">stop 180 L</text>"));
  EXPECT_THAT(html, HasSubstr(">60 L</text>"));
  EXPECT_THAT(html, HasSubstr("role=\"img\" aria-label=\"The vat: "));
  EXPECT_THAT(html, HasSubstr("60 L of 200 L"));
  EXPECT_THAT(html, HasSubstr("class=\"water\""));
}

// What a household or a person wrote is text and nothing else.
TEST_F(PanelPage, WritesForeignTextAsText) {
  stage.room.vat->holds = "<script>alert(1)</script>\n\"&'";
  stage.room.actuators[0].words = "</section><b>";
  stage.begin();
  stage.says(support::level, 190);
  stage.says(support::level, 190);
  const std::string html = everything();
  EXPECT_THAT(html, Not(HasSubstr("<script")));
  EXPECT_THAT(html, Not(HasSubstr("<b>")));
  expect_sound(html);
}

TEST_F(PanelPage, ARoomWithoutAVatIsAboutItsFloor) {
  stage = Stage(support::attended_room());
  stage.begin();
  EXPECT_THAT(part("sentence"), HasSubstr("Dry: no water on the floor."));
  EXPECT_THAT(part("vessel"), HasSubstr(" hidden"));
  EXPECT_THAT(part("path"), HasSubstr(" hidden"));  // nothing on it is measured
  stage.wait_without(0, 1h);
  EXPECT_THAT(part("sentence"), Not(HasSubstr("Dry")));
  expect_sound(everything());
}

TEST_F(PanelPage, AWholePageStandsWithoutScript) {
  stage.begin();
  const std::string main = everything();
  const std::string page =
      whole(look, "waterroom",
            {.page = Page::now, .as_of = "As of 14:05", .live = true, .is_answered = false}, main);
  EXPECT_TRUE(page.starts_with("<!doctype html><html lang=\"en\">"));
  EXPECT_THAT(page, HasSubstr(main));
  EXPECT_THAT(page, HasSubstr("<noscript><meta http-equiv=\"refresh\" content=\"60\">"));
  EXPECT_THAT(page, HasSubstr("<a href=\"/\" aria-current=\"page\">Now</a>"));
  EXPECT_THAT(page, HasSubstr("<title>waterroom – Now</title>"));
  EXPECT_THAT(page, Not(HasSubstr("/tell"))) << "it can only be looked at";
  EXPECT_THAT(page, Not(HasSubstr("<form")));
  EXPECT_THAT(page, Not(HasSubstr("http:")));
  EXPECT_THAT(page, Not(HasSubstr("https:")));
  // The script and the style come from files: the policy forbids them in the page.
  EXPECT_FALSE(std::regex_search(page, std::regex("<style|<script>|style=\"|\\son[a-z]+=\"")));
}

}  // namespace
}  // namespace tidewright::panel
