// What is refused, and in which words: where, found, expected, allowed, what to do.
#include "daemon/commands/reckon/reckon.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sysexits.h>

#include <set>
#include <sstream>

#include "daemon/commands/reckon/parameters.hpp"
#include "daemon/commands/reckon/print.hpp"
#include "daemon/commands/reckon/quantities.hpp"

namespace tidewright::commands::reckon {
namespace {

using testing::AllOf;
using testing::HasSubstr;

struct Bad {
  const Quantity* quantity;
  TypedOptions typed;
  int code;
  std::vector<std::string> says;
};

class Refused : public testing::TestWithParam<Bad> {};

TEST_P(Refused, InWords) {
  std::ostringstream out;
  std::ostringstream err;
  EXPECT_EQ(reckon(*GetParam().quantity, GetParam().typed, false, out, err), GetParam().code);
  EXPECT_EQ(out.str(), "");
  EXPECT_THAT(err.str(), AllOf(HasSubstr("\nwhere "), HasSubstr("\nfound "),
                               HasSubstr("\nexpected "), HasSubstr("\nwhat to do ")));
  for (const std::string& words : GetParam().says) EXPECT_THAT(err.str(), HasSubstr(words));
}

INSTANTIATE_TEST_SUITE_P(
    Typed, Refused,
    testing::Values(
        Bad{&density, {}, EX_USAGE, {"--practical-salinity", "nothing", "0 to 70"}},
        Bad{&density,
            {{"--practical-salinity", "35"}},
            EX_USAGE,
            {"--temperature-c or --temperature-f", "-5 to 60 °C"}},
        Bad{&density,
            {{"--practical-salinity", "35"}, {"--temperature-c", "25,5"}},
            EX_USAGE,
            {"`25,5`, which is no number", "behind a point"}},
        Bad{&density,
            {{"--practical-salinity", "35"}, {"--temperature-c", "25C"}},
            EX_USAGE,
            {"its unit stands in the option's name"}},
        Bad{&density,
            {{"--practical-salinity", "nan"}, {"--temperature-c", "25"}},
            EX_USAGE,
            {"`nan`, which is no number"}},
        Bad{&density,
            {{"--practical-salinity", "1e400"}, {"--temperature-c", "25"}},
            EX_USAGE,
            {"which is no number"}},
        Bad{&density,
            {{"--practical-salinity", "35"}, {"--temperature-c", "61"}},
            EX_DATAERR,
            {"61", "-5 to 60 °C"}},
        Bad{&density,
            {{"--practical-salinity", "35"}, {"--temperature-f", "300"}},
            EX_DATAERR,
            {"--temperature-f", "23 to 140 °F"}},
        Bad{&density,
            {{"--practical-salinity", "35"}, {"--temperature-c", "25"}, {"--temperature-f", "77"}},
            EX_USAGE,
            {"a second time", "one unit only"}}));

INSTANTIATE_TEST_SUITE_P(
    Seawater, Refused,
    testing::Values(
        Bad{&salinity,
            {},
            EX_USAGE,
            {"--conductivity-ms-cm, --conductivity-at-25-ms-cm, --specific-gravity"}},
        Bad{&salinity,
            {{"--conductivity-ms-cm", "53"}},
            EX_USAGE,
            {"--temperature-c or --temperature-f"}},
        Bad{&salinity,
            {{"--conductivity-ms-cm", "53"}, {"--brine-scale-g-kg", "35"}},
            EX_USAGE,
            {"--brine-scale-g-kg", "a second reading"}},
        Bad{&salinity,
            {{"--specific-gravity", "1.025"}, {"--temperature-c", "25"}},
            EX_USAGE,
            {"--scale", "no scale", "25/25, 20/20, 60F/60F, 17.5/17.5, 15/15, 15/4, 20/4, 25/4"}},
        Bad{&salinity,
            {{"--specific-gravity", "1.025"}, {"--temperature-c", "25"}, {"--scale", "26/26"}},
            EX_USAGE,
            {"`26/26`", "25/25, 20/20"}},
        Bad{&salinity,
            {{"--specific-gravity", "0.95"}, {"--temperature-c", "25"}, {"--scale", "25/25"}},
            EX_DATAERR,
            {"specific gravity", "0.95"}},
        Bad{&salinity,
            {{"--refractive-index", "1.34"}, {"--temperature-c", "20"}, {"--instrument", "probe"}},
            EX_USAGE,
            {"`probe`", "index_refractometer"}},
        Bad{&salinity,
            {{"--conductivity-at-25-ms-cm", "53"}, {"--temperature-c", "20"}},
            EX_USAGE,
            {"--law", "no law", "linear, iso-7888, none", "0.13 too high"}},
        Bad{&salinity,
            {{"--conductivity-at-25-ms-cm", "53"}, {"--temperature-c", "20"}, {"--law", "usual"}},
            EX_USAGE,
            {"`usual`", "linear, iso-7888, none"}},
        Bad{&salinity,
            {{"--conductivity-at-25-ms-cm", "53"}, {"--law", "linear"}},
            EX_USAGE,
            {"--temperature-c or --temperature-f"}},
        Bad{&salinity,
            {{"--conductivity-at-25-ms-cm", "53"},
             {"--temperature-c", "20"},
             {"--law", "iso-7888"},
             {"--percent-per-celsius", "2"}},
            EX_USAGE,
            {"--percent-per-celsius", "linear law alone"}},
        Bad{&salinity,
            {{"--conductivity-at-25-ms-cm", "53"},
             {"--temperature-c", "36"},
             {"--law", "iso-7888"}},
            EX_DATAERR,
            {"temperature", "0 to 35 °C"}},
        Bad{&salinity,
            {{"--conductivity-ms-cm", "53"}, {"--temperature-c", "20"}, {"--law", "linear"}},
            EX_USAGE,
            {"--law", "--conductivity-at-25-ms-cm"}},
        Bad{&readings, {{"--temperature-c", "20"}}, EX_USAGE, {"--practical-salinity"}},
        Bad{&readings,
            {{"--practical-salinity", "35"}, {"--temperature-c", "20"}, {"--scale", "26/26"}},
            EX_USAGE,
            {"`26/26`", "25/25, 20/20"}},
        Bad{&gravity, {{"--practical-salinity", "35"}}, EX_USAGE, {"no scale", "25/25"}}));

const TypedOptions batch{{"--volume-l", "100"}, {"--temperature-c", "25"}};

TypedOptions with(TypedOptions typed, const TypedOptions& more) {
  typed.insert(more.begin(), more.end());
  return typed;
}

INSTANTIATE_TEST_SUITE_P(
    Mixture, Refused,
    testing::Values(
        Bad{&dose,
            {{"--temperature-c", "25"}, {"--practical-salinity", "35"}},
            EX_USAGE,
            {"--volume-l or --finished-volume-l"}},
        Bad{&dose,
            with(batch, {{"--practical-salinity", "35"}, {"--water-fraction", "5"}}),
            EX_DATAERR,
            {"--water-fraction", "0 to 0.5"}},
        Bad{&correct,
            with(batch, {{"--from-practical-salinity", "37"},
                         {"--to-practical-salinity", "35"},
                         {"--vat-l", "90"}}),
            EX_DATAERR,
            {"volume", "100 L", "90 L"}},
        Bad{&correct,
            with(batch, {{"--from-practical-salinity", "37"}, {"--to-practical-salinity", "0"}}),
            EX_DATAERR,
            {"wanted practical salinity"}},
        Bad{&change,
            {{"--tank-l", "400"}, {"--change-l", "40"}, {"--now", "40"}},
            EX_USAGE,
            {"--times or --days"}},
        Bad{&change,
            {{"--tank-l", "400"}, {"--change-l", "40"}, {"--times", "4"}},
            EX_USAGE,
            {"--now or --parameters"}},
        Bad{&change,
            {{"--tank-l", "40"}, {"--change-l", "400"}, {"--times", "4"}, {"--now", "40"}},
            EX_DATAERR,
            {"--change-l", "40 L"}},
        Bad{&change,
            {{"--tank-l", "400"},
             {"--change-l", "100"},
             {"--times", "4"},
             {"--now", "40"},
             {"--gain-per-change", "2"},
             {"--target", "5"}},
            EX_DATAERR,
            {"--target", "never reached"}},
        Bad{&change,
            {{"--tank-l", "400"},
             {"--change-l", "40"},
             {"--times", "4"},
             {"--parameters", "nitrate:40"}},
            EX_USAGE,
            {"`nitrate:40`", "NAME=NOW,NEW,GAIN"}},
        Bad{&blend, batch, EX_USAGE, {"--practical-salinity"}},
        Bad{&evaporation,
            with(batch, {{"--practical-salinity", "35"}}),
            EX_USAGE,
            {"--evaporated-l or --now-practical-salinity"}},
        Bad{&evaporation,
            with(batch, {{"--practical-salinity", "35"}, {"--evaporated-l", "99"}}),
            EX_DATAERR,
            {"0 to 90 L"}}));

INSTANTIATE_TEST_SUITE_P(
    Purifier, Refused,
    testing::Values(
        Bad{&membrane, {{"--feed-ppm", "300"}}, EX_USAGE, {"--permeate-ppm"}},
        Bad{&series, {{"--feed-ppm", "300"}}, EX_USAGE, {"--feed-l-h or --feed-gal-day"}},
        Bad{&series,
            {{"--feed-ppm", "300"}, {"--feed-l-h", "40"}, {"--first-recovery-percent", "100"}},
            EX_DATAERR,
            {"--first-recovery-percent", "0 to 99 %"}},
        Bad{&resin, {{"--resin-l", "1.5"}}, EX_USAGE, {"--permeate-us-cm or --permeate-ppm"}},
        Bad{&resin,
            {{"--resin-l", "1.5"}, {"--permeate-us-cm", "12"}, {"--earlier-l", "3000"}},
            EX_USAGE,
            {"--earlier-reads-percent", "two readings"}},
        Bad{&solids,
            {{"--shown-ppm", "300"}},
            EX_USAGE,
            {"no factor", "0.5 (sodium-chloride), 0.64 (irrigation), 0.7 (natural-water)"}},
        Bad{&solids, {{"--shown-ppm", "3"}, {"--factor", "0.55"}}, EX_USAGE, {"`0.55`"}},
        Bad{&solids, {{"--factor", "0.5"}}, EX_USAGE, {"nothing", "one reading"}},
        Bad{&solids,
            {{"--factor", "0.5"}, {"--shown-ppm", "3"}, {"--conductivity-us-cm", "6"}},
            EX_USAGE,
            {"more than one"}},
        Bad{&solids,
            {{"--factor", "0.5"}, {"--conductivity-us-cm", "6"}},
            EX_USAGE,
            {"--temperature-c or --temperature-f"}},
        Bad{&solids,
            {{"--factor", "0.5"}, {"--shown-ppm", "3"}, {"--temperature-c", "20"}},
            EX_USAGE,
            {"--temperature-c", "raw conductivity alone"}},
        Bad{&solids,
            {{"--factor", "0.5"},
             {"--conductivity-us-cm", "6"},
             {"--temperature-c", "20"},
             {"--law", "none"}},
            EX_USAGE,
            {"`none`", "linear, iso-7888, pure-water"}},
        Bad{&solids,
            {{"--factor", "0.5"},
             {"--conductivity-us-cm", "600"},
             {"--temperature-c", "20"},
             {"--law", "pure-water"}},
            EX_DATAERR,
            {"600", "0 to 100"}},
        Bad{&zero, {}, EX_USAGE, {"no factor", "0.7 (natural-water)"}},
        Bad{&zero, {{"--factor", "0.5"}, {"--display", "blinks"}}, EX_USAGE, {"rounds, cuts"}},
        Bad{&zero, {{"--factor", "0.5"}, {"--step-ppm", "20"}}, EX_DATAERR, {"0.1 to 10 ppm"}},
        Bad{&carbonate,
            {{"--alkalinity-mg-l", "150"}, {"--ph", "9"}},
            EX_DATAERR,
            {"--ph", "5 to 8.3"}},
        Bad{&vessel, {}, EX_USAGE, {"--shape"}},
        Bad{&vessel, {{"--shape", "bowl"}}, EX_USAGE, {"`bowl`", "cylinder, cone, box"}},
        Bad{&vessel, {{"--shape", "box"}, {"--length-m", "1"}}, EX_USAGE, {"--width-m"}},
        Bad{&vessel,
            {{"--shape", "cylinder"}, {"--radius-m", "0.3"}, {"--height-m", "1"}},
            EX_USAGE,
            {"--depth-m, --volume-l, --distance-m or --pressure-bar"}},
        Bad{&vessel,
            {{"--shape", "cylinder"},
             {"--radius-m", "0.3"},
             {"--height-m", "1"},
             {"--depth-m", "1.2"}},
            EX_DATAERR,
            {"depth", "0 to 1 m"}},
        Bad{&vessel,
            {{"--shape", "table"}, {"--points", "0:0 0.1"}, {"--depth-m", "0.1"}},
            EX_USAGE,
            {"`0.1`", "DEPTH:LITRES"}},
        Bad{&irrigation, {}, EX_USAGE, {"--conductivity-ms-cm"}},
        Bad{&irrigation,
            {{"--conductivity-ms-cm", "1"}, {"--sodium-meq-l", "7"}},
            EX_USAGE,
            {"--calcium-meq-l and --magnesium-meq-l"}}));

TEST(NoSuchOption, IsAnsweredWithTheNearest) {
  EXPECT_EQ(no_such_option(density, "--temperature").remedy, "Did you mean --temperature-c?");
  EXPECT_EQ(no_such_option(density, "--practical-salinty").remedy,
            "Did you mean --practical-salinity?");
  EXPECT_THAT(no_such_option(density, "--weather").remedy, HasSubstr("--help"));
}

TEST(Inputs, AreMetricWhateverWasTyped) {
  const auto read = read_inputs(
      dose, {{"--volume-gal", "100"}, {"--temperature-f", "77"}, {"--practical-salinity", "35"}});
  const auto& inputs = std::get<Inputs>(read);
  // NIST Handbook 44, appendix C.
  EXPECT_NEAR(inputs["volume-l"], 378.5411784, 1e-9);
  EXPECT_NEAR(inputs["temperature-c"], 25, 1e-12);
  EXPECT_TRUE(inputs.customary());
}

TEST(Parameters, AreReadByName) {
  const auto read = read_parameters("nitrate=40,0,2 phosphate=0.2");
  const auto& all = std::get<std::vector<Parameter>>(read);
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(all[0].name, "nitrate");
  EXPECT_EQ(all[0].gain, 2);
  EXPECT_EQ(all[1].now, 0.2);
  EXPECT_EQ(all[1].incoming, 0);
  EXPECT_TRUE(std::holds_alternative<Refusal>(read_parameters("")));
}

TEST(Text, ShowsAnUncertaintyWithTwoDigits) {
  const Reckoned reckoned{{{"salt_g", "salt", 3832.5, Unit::grams, 1, 151.8},
                           {"depth_m", "depth", -0.00001, Unit::metres, 2}},
                          "a formula",
                          "a source",
                          "so sure"};
  EXPECT_EQ(as_text(reckoned, false),
            "salt         3830 ± 150 g\n"
            "depth        0.00 m\n\n"
            "formula      a formula\nsource       a source\nhow sure     so sure\n");
}

TEST(Quantities, HaveEachAnExampleAndNamesOfTheirOwn) {
  std::set<std::string_view> names;
  for (const Quantity* quantity : quantities()) {
    EXPECT_TRUE(names.insert(quantity->name).second) << quantity->name;
    EXPECT_THAT(quantity->example, HasSubstr(std::string("tidewright reckon ") + quantity->name));
    std::set<std::string> options;
    for (const Option& option : quantity->options) {
      EXPECT_TRUE(options.insert(option_name(option.stem, option.unit)).second) << option.stem;
    }
  }
  EXPECT_EQ(names.size(), 23U);
}

}  // namespace
}  // namespace tidewright::commands::reckon
