#include "daemon/panel/style.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/rules/catalogue.hpp"
#include "daemon/panel/alarm_words.hpp"

namespace tidewright::panel {
namespace {

using namespace std::chrono_literals;

config::Panel metric() { return {}; }
config::Panel american() {
  config::Panel panel;
  panel.us_units = panel.twelve_hours = true;
  return panel;
}
config::Panel german() {
  config::Panel panel;
  panel.language = config::Language::german;
  return panel;
}

TEST(PanelStyle, WritesLitresAsTheHouseholdChose) {
  EXPECT_EQ(Style(metric()).litres(162.04), "162 L");
  EXPECT_EQ(Style(metric()).litres(16.94), "16.9 L");
  EXPECT_EQ(Style(german()).litres(16.94), "16,9 L");
  // NIST SP 811 (2008), B.8: 1 US gallon is 3.785412 L, so 37.85412 L are ten.
  EXPECT_EQ(Style(american()).litres(37.85412), "10 gal");
}

TEST(PanelStyle, RewritesTheUnitsOfASentence) {
  const Style style(american());
  // NIST SP 811: 75.70824 L are 20 gal; 10 degrees Celsius are 50 Fahrenheit; 1 bar is 14.50377
  // psi.
  EXPECT_EQ(style.rewritten("the pure vat holds 75.7 L, below start at 37.9 L"),
            "The pure vat holds 20 gal, below start at 10 gal.");
  EXPECT_EQ(style.rewritten("it shows 10 °C"), "It shows 50 °F.");
  EXPECT_EQ(style.rewritten("only 3.785 L/h come"), "Only 1 gal/h come.");
  EXPECT_EQ(style.rewritten("under 1 bar it runs dry"), "Under 14.5 psi it runs dry.");
  // Not a unit: the word goes on; not a figure: it is part of a name.
  EXPECT_EQ(style.rewritten("3 Lamps of vat2 L"), "3 Lamps of vat2 L.");
}

TEST(PanelStyle, LeavesASentenceAsItIsInMetricUnits) {
  EXPECT_EQ(Style(metric()).rewritten("the pure vat holds 75.7 L until 14:05"),
            "The pure vat holds 75.7 L until 14:05.");
}

TEST(PanelStyle, WritesTheTimeOfDayIn12Or24Hours) {
  const std::string now = "2026-03-01T15:31:00+01:00";
  EXPECT_EQ(Style(metric()).time("2026-03-01T00:05:00+01:00", now), "00:05");
  // 12-hour clock: midnight is 12 am, noon is 12 pm (common practice).
  EXPECT_EQ(Style(american()).time("2026-03-01T00:05:00+01:00", now), "12:05 am");
  EXPECT_EQ(Style(american()).time("2026-03-01T12:00:00+01:00", now), "12:00 pm");
  EXPECT_EQ(Style(metric()).time("2026-03-02T09:10:00+01:00", now), "tomorrow 09:10");
  EXPECT_EQ(Style(german()).time("2026-02-28T09:10:00+01:00", now), "gestern 09:10");
  EXPECT_EQ(Style(metric()).time("2026-04-02T09:10:00+01:00", now), "2026-04-02 09:10");
  EXPECT_EQ(Style(american()).rewritten("time to act: 30 min, until 21:24"),
            "Time to act: 30 min, until 9:24 pm.");
}

TEST(PanelStyle, SaysHowLongAsAPersonWould) {
  const Style style(metric());
  EXPECT_EQ(style.lasting(0min), "1 min");
  EXPECT_EQ(style.lasting(89min), "89 min");
  EXPECT_EQ(style.lasting(200min), "3 h 20 min");
  EXPECT_EQ(style.lasting(120min), "2 h");
  EXPECT_EQ(style.lasting(std::chrono::hours{24 * 9}), "9 days");
}

TEST(PanelStyle, TakesNoTimeFromWhatIsNone) {
  EXPECT_FALSE(local_time(""));
  EXPECT_FALSE(local_time("soon"));
  EXPECT_FALSE(local_time("2026-02-30"));
  EXPECT_FALSE(local_time("2026-03-01Tx5:31:00+01:00"));
  // `date -u -d '2026-03-01 15:31' +%s`
  EXPECT_EQ(local_time("2026-03-01T15:31:00+01:00")->time_since_epoch(), 1'772'379'060s);
}

TEST(PanelStyle, MarksWhatCoreSaysAsEnglishOnAPageThatIsNot) {
  EXPECT_EQ(Style(metric()).sentence("reset `leak` & wait"), "Reset <code>leak</code> &amp; wait.");
  EXPECT_EQ(Style(german()).sentence("a <b> c"), "<span lang=\"en\">A &lt;b&gt; c.</span>");
  const rules::Rule& leak = rules::rule(room::RuleId::leak);
  EXPECT_EQ(Style(german()).sentence("Look first. " + std::string(leak.record.action) + "."),
            "<span lang=\"en\">Look first.</span> Den Zulaufhahn von Hand schließen. Das Wasser "
            "finden, Boden und Fühler trocknen. Erst dann <code>leak</code> zurücksetzen; vorher "
            "läuft nichts, und <code>start</code> beginnt das Füllen neu.");
}

TEST(PanelWords, EveryAlarmAndWhatToDoAboutItIsSaidInGerman) {
  for (const rules::Rule* rule : rules::catalogue) {
    for (const std::string_view english : {rule->title, rule->record.action}) {
      const auto german = in_german(english);
      ASSERT_TRUE(german.has_value()) << english;
      EXPECT_EQ(german->before, "");
      EXPECT_NE(german->german, english);
      EXPECT_EQ(std::count(german->german.begin(), german->german.end(), '`'),
                std::count(english.begin(), english.end(), '`'))
          << english;
    }
  }
  EXPECT_FALSE(in_german("The water is wet.").has_value());
}

TEST(PanelWords, EachIsSaidInBothLanguagesWithTheSamePlaces) {
  const auto places = [](std::string_view text) {
    std::string found;
    for (const std::string_view place : {"{a}", "{b}", "{time}"}) {
      if (text.find(place) != text.npos) found += place;
    }
    return found;
  };
  for (int i = 0; i <= static_cast<int>(Word::try_phone_answer); ++i) {
    const auto english = word(config::Language::english, static_cast<Word>(i));
    const auto other = word(config::Language::german, static_cast<Word>(i));
    EXPECT_FALSE(english.empty()) << i;
    EXPECT_FALSE(other.empty()) << i;
    EXPECT_EQ(places(english), places(other)) << english;
  }
}

}  // namespace
}  // namespace tidewright::panel
