#include "daemon/panel/curve.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>

#include "daemon/panel/chart.hpp"

namespace tidewright::panel {
namespace {

using namespace std::chrono_literals;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;

// `date -u -d '2026-03-01 06:30' +%s`
const Instant from{std::chrono::seconds{1'772'346'600}};
const WallClock wall{Duration{0}, std::chrono::minutes{60}};

TEST(PanelCurve, KeepsLowestHighestAndLastOfEachSlice) {
  Curve curve(from, from + 6h);  // a slice is a minute
  for (const double value : {5.0, 2.0, 9.0, 4.0}) curve.add(from + 30s, value);
  curve.add(from + 6h, 7);
  const auto& first = curve.slices().front();
  ASSERT_TRUE(first);
  EXPECT_EQ(first->lowest, 2);
  EXPECT_EQ(first->highest, 9);
  EXPECT_EQ(first->last, 4);
  EXPECT_FALSE(curve.slices()[1]);
  EXPECT_EQ(curve.slices().back()->last, 7);
}

TEST(PanelCurve, PassesOverWhatIsOutsideOrNoNumber) {
  Curve curve(from, from + 1h);
  curve.add(from - 1s, 1);
  curve.add(from + 1h + 1s, 1);
  curve.add(from + 1min, std::numeric_limits<double>::quiet_NaN());
  curve.add(from + 1min, std::numeric_limits<double>::infinity());
  curve.add(Mark{from - 1s, "rotated", "ann"});
  EXPECT_FALSE(curve.whole());
  EXPECT_TRUE(curve.marks().empty());
}

TEST(PanelCurve, KeepsTheLastMarks) {
  Curve curve(from, from + 1h);
  for (int i = 0; i < 40; ++i) curve.add(Mark{from + std::chrono::minutes{i}, "measured", "ann"});
  ASSERT_EQ(curve.marks().size(), Curve::marks_most);
  EXPECT_EQ(curve.marks().back().at, from + 39min);
}

// Steps of 1, 2 or 5 times a power of ten: common practice of drawn axes.
TEST(PanelCurve, ItsAxisHasRoundFigures) {
  EXPECT_THAT(round_figures(60, 120), ElementsAre(60, 80, 100, 120));
  EXPECT_THAT(round_figures(0, 9.7), ElementsAre(0, 5, 10));
  for (const auto& [low, high] :
       {std::pair{0.0, 0.0}, {5.0, 5.0}, {-3.0, 4.0}, {1e6, 1.1e6}, {0.0, 1e-9}, {-1e4, -1e4}}) {
    const auto figures = round_figures(low, high);
    EXPECT_LE(figures.front(), low);
    EXPECT_GE(figures.back(), high);
    EXPECT_GE(figures.size(), 2U);
    EXPECT_LE(figures.size(), 7U) << low << " " << high;
  }
}

TEST(PanelChart, DrawsTheCurveItsMarksAndSaysItInWords) {
  Curve curve(from, from + 24h);
  for (int i = 0; i < 24 * 60; ++i) curve.add(from + std::chrono::minutes{i}, 60 + i / 24.0);
  curve.add(Mark{from + 12h, "rotated", "ann & <b>"});
  const std::string html = chart(curve, "L", wall, Style(config::Panel{}));
  EXPECT_THAT(html, HasSubstr("role=\"img\" aria-label=\"Lowest 60 L, highest 120 L.\""));
  EXPECT_THAT(html, HasSubstr(">07:30</text>"));  // an hour east of 06:30
  EXPECT_THAT(html, HasSubstr("<code lang=\"en\">rotated</code>, told by ann &amp; &lt;b&gt;"));
  EXPECT_EQ(html.find('M', html.find("class=\"curve\" d=\"")),
            html.find("class=\"curve\" d=\"") + 17);
  config::Panel american;
  american.us_units = true;
  // NIST SP 811: 60 L are 15.85 US gallons, 120 L are 31.7.
  EXPECT_THAT(chart(curve, "L", wall, Style(american)),
              HasSubstr("Lowest 15.9 gal, highest 31.7 gal."));
}

// Nobody knows what was in between.
TEST(PanelChart, BreaksTheLineWhereNothingWasRead) {
  const auto pieces = [](Duration gap) {
    Curve curve(from, from + 24h);
    for (Duration at{0}; at < 24h; at += 10min) {
      if (at < 8h || at > 8h + gap) curve.add(from + at, 1);
    }
    const std::string html = chart(curve, "ppm", wall, Style(config::Panel{}));
    const std::size_t begin = html.find("class=\"curve\"");
    const std::string line = html.substr(begin, html.find("/>", begin) - begin);
    return std::count(line.begin(), line.end(), 'M');
  };
  EXPECT_EQ(pieces(1h), 1);
  EXPECT_EQ(pieces(4h), 2);
}

TEST(PanelChart, SaysThatThereIsNothing) {
  const std::string html = chart(Curve(from, from + 1h), "L", wall, Style(config::Panel{}));
  EXPECT_THAT(html, HasSubstr("no reading of it"));
  EXPECT_THAT(html, Not(HasSubstr("<svg")));
}

}  // namespace
}  // namespace tidewright::panel
