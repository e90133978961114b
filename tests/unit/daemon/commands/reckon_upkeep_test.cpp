// What `tidewright reckon` says of a purifier's upkeep: which advice, and what is refused.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sysexits.h>

#include <sstream>

#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/reckon.hpp"

namespace tidewright::commands::reckon {
namespace {

using testing::HasSubstr;
using testing::Not;

struct Said {
  int code;
  std::string text;  // of the answer, or of the refusal
};

Said say(const Quantity& quantity, const TypedOptions& typed) {
  std::ostringstream out;
  std::ostringstream err;
  const int code = reckon(quantity, typed, false, out, err);
  return {code, out.str() + err.str()};
}

TypedOptions with(TypedOptions typed, const TypedOptions& more) {
  for (const auto& [name, text] : more) typed[name] = text;
  return typed;
}

struct Words {
  const char* name;
  const Quantity* quantity;
  TypedOptions typed;
  int code;
  std::vector<std::string> says;
};

class Upkeep : public testing::TestWithParam<Words> {};

TEST_P(Upkeep, SaysIt) {
  const Said said = say(*GetParam().quantity, GetParam().typed);
  EXPECT_EQ(said.code, GetParam().code) << said.text;
  for (const std::string& words : GetParam().says) EXPECT_THAT(said.text, HasSubstr(words));
}

std::string name(const testing::TestParamInfo<Words>& info) { return info.param.name; }

const TypedOptions as_new{{"--first-temperature-c", "25"},    {"--temperature-c", "25"},
                          {"--first-feed-pressure-bar", "5"}, {"--feed-pressure-bar", "5"},
                          {"--first-feed-ppm", "300"},        {"--feed-ppm", "300"},
                          {"--first-permeate-ppm", "6"},      {"--permeate-ppm", "6"},
                          {"--first-permeate-l-h", "12"},     {"--permeate-l-h", "12"},
                          {"--first-concentrate-l-h", "36"},  {"--concentrate-l-h", "36"}};

TypedOptions membrane_now(const char* flow, const char* ppm) {
  return with(as_new, {{"--permeate-l-h", flow}, {"--permeate-ppm", ppm}});
}

// FilmTec Reverse Osmosis Membranes Technical Manual, DuPont, form 45-D01504-en rev. 20, table 44
// (flow and passage: which cause moves them which way) and section 6.3 (10 %), in a copy. At equal
// temperatures and pressures the change is nearly that of the flow itself.
INSTANTIATE_TEST_SUITE_P(
    Normalised, Upkeep,
    testing::Values(
        Words{
            "TheSameDay", &normalised, as_new, EX_OK, {"0.0 ± ", "as when it was new", "nothing"}},
        Words{"Fouled", &normalised, membrane_now("10", "6"), EX_OK, {"slime or dirt", "clean it"}},
        Words{"Scaled", &normalised, membrane_now("10", "8"), EX_OK, {"scale or dirt", "clean it"}},
        Words{"Oxidised",
              &normalised,
              membrane_now("14", "15"),
              EX_OK,
              {"chlorine has eaten it, or a seal leaks", "then replace the membrane"}},
        Words{"Leaking", &normalised, membrane_now("12", "9"), EX_OK, {"look at the seals"}},
        Words{"Misread", &normalised, membrane_now("15", "5"), EX_OK, {"read again"}},
        Words{"NoDrive",
              &normalised,
              with(as_new, {{"--feed-pressure-bar", "0.1"}}),
              EX_DATAERR,
              {"net driving pressure"}},
        Words{"OneState",
              &normalised,
              {{"--first-temperature-c", "25"}},
              EX_USAGE,
              {"--first-feed-pressure-bar"}}),
    name);

const TypedOptions stand{{"--start-ppm", "200"}, {"--permeate-ppm", "8"}, {"--permeate-l-h", "12"}};

INSTANTIATE_TEST_SUITE_P(
    Startup, Upkeep,
    testing::Values(
        Words{"GuessedHoldUp", &startup, stand, EX_OK, {"is a guess", "--half-way-min"}},
        // By hand: 12 L/h x 0.8664 min / (60 ln 2) = 0.25 L.
        Words{"LearnedHoldUp",
              &startup,
              with(stand, {{"--half-way-min", "0.8664"}}),
              EX_OK,
              {"hold-up found", "0.250 ± "}},
        Words{"BetterThanSettled",
              &startup,
              with(stand, {{"--start-ppm", "5"}}),
              EX_DATAERR,
              {"--start-ppm", "8 to 60000 ppm"}},
        Words{"HalfADay",
              &startup,
              with(stand, {{"--starts-per-day", "4"}}),
              EX_USAGE,
              {"--starts-per-day and --per-day-l"}}),
    name);

// 38000 L at 2 mg/L, half relied upon: 38 g. 250 L a day at 0.5 mg/L: 0.125 g a day, 304 days.
const TypedOptions cartridge{{"--against", "chlorine"},
                             {"--disinfectant-mg-l", "0.5"},
                             {"--rated-l", "38000"},
                             {"--feed-per-day-l", "250"}};

// The calendars: a maker's manual for reverse osmosis at the point of use.
INSTANTIATE_TEST_SUITE_P(
    Carbon, Upkeep,
    testing::Values(
        Words{"ByLitres", &carbon, cartridge, EX_OK, {"300 ± ", "the litres"}},
        Words{"ByCalendar",
              &carbon,
              with(cartridge, {{"--in-use-days", "360"}, {"--passed-l", "1000"}}),
              EX_OK,
              {"5.0 days", "the calendar"}},
        Words{"ByCalendarOfChloramine",
              &carbon,
              with(cartridge, {{"--against", "chloramine"}}),
              EX_OK,
              {"183.0 days", "the calendar", "two to five times", "total chlorine"}},
        Words{"ByTest",
              &carbon,
              with(cartridge, {{"--behind-mg-l", "0.2"}}),
              EX_OK,
              {"change it now", "the test"}},
        Words{"AgainstNothing",
              &carbon,
              with(cartridge, {{"--against", "lime"}}),
              EX_USAGE,
              {"`lime`", "chlorine, chloramine"}},
        Words{"NoFlow",
              &carbon,
              {{"--against", "chlorine"}, {"--disinfectant-mg-l", "0.5"}, {"--rated-l", "38000"}},
              EX_USAGE,
              {"--product-per-day-l and --recovery-percent"}}),
    name);

const TypedOptions gauges{{"--clean-drop-bar", "0.1"},
                          {"--clean-feed-l-h", "100"},
                          {"--drop-bar", "0.45"},
                          {"--feed-l-h", "100"}};

INSTANTIATE_TEST_SUITE_P(
    Sediment, Upkeep,
    testing::Values(
        Words{"HalfUsed", &sediment, gauges, EX_OK, {"50 ± ", "leave it"}},
        Words{"AYearOld",
              &sediment,
              with(gauges, {{"--in-use-days", "365"}}),
              EX_OK,
              {"0 days", "change it now"}},
        Words{"Full", &sediment, with(gauges, {{"--drop-bar", "0.9"}}), EX_OK, {"change it now"}},
        Words{"EmptyHousing",
              &sediment,
              with(gauges, {{"--drop-bar", "0.05"}}),
              EX_OK,
              {"Less drop than when it was clean"}},
        Words{"OtherFlow",
              &sediment,
              with(gauges, {{"--feed-l-h", "5"}}),
              EX_DATAERR,
              {"flow / reference flow"}}),
    name);

const TypedOptions canisters{
    {"--permeate-ppm", "10"}, {"--lead-outlet-ppm", "2"}, {"--product-ppm", "0"}};

INSTANTIATE_TEST_SUITE_P(
    Rotation, Upkeep,
    testing::Values(
        Words{"NotYet", &rotation, canisters, EX_OK, {"nothing; rotate when", "reads 5 ppm"}},
        Words{"Turn",
              &rotation,
              with(canisters, {{"--lead-outlet-ppm", "5"}}),
              EX_OK,
              {"rotate now: lead out", "never a used canister behind"}},
        Words{"Late",
              &rotation,
              with(canisters, {{"--lead-outlet-ppm", "9"}, {"--product-ppm", "2"}}),
              EX_OK,
              {"to the drain until it is good again"}},
        Words{"BothSpent",
              &rotation,
              with(canisters, {{"--lead-outlet-ppm", "10"}, {"--product-ppm", "10"}}),
              EX_OK,
              {"change both"}},
        Words{"LimitAbovePermeate",
              &rotation,
              with(canisters, {{"--half-l", "5000"}, {"--limit-ppm", "12"}}),
              EX_DATAERR,
              {"--limit-ppm", "0.01 to 9.9 ppm"}},
        Words{"NothingSeen",
              &rotation,
              with(canisters, {{"--lead-outlet-ppm", "0"}}),
              EX_OK,
              {"the lead has left, at least", "the lag has left, at least", "fresh or half spent"}},
        Words{"WorseBehind",
              &rotation,
              with(canisters, {{"--product-ppm", "3"}}),
              EX_DATAERR,
              {"--product-ppm", "Were the probes mixed up?"}},
        Words{"CoarseMeter",
              &rotation,
              with(canisters, {{"--permeate-ppm", "1"}, {"--lead-outlet-ppm", "1"}}),
              EX_DATAERR,
              {"--permeate-ppm", "cannot tell the canisters apart"}},
        Words{"StrongerThanPermeate",
              &rotation,
              with(canisters, {{"--lead-outlet-ppm", "12"}}),
              EX_DATAERR,
              {"--lead-outlet-ppm", "0 to 10 ppm"}}),
    name);

// Classes: US Geological Survey. 12 grains per US gallon: NIST Handbook 44, 205.4 mg/L.
INSTANTIATE_TEST_SUITE_P(
    Hardness, Upkeep,
    testing::Values(
        Words{"Moderate", &hardness, {{"--hardness-mg-l", "100"}}, EX_OK, {"moderately hard"}},
        Words{"Grains", &hardness, {{"--hardness-gpg", "12"}}, EX_OK, {"205 ± ", "12.0 ± "}},
        Words{"Concentrate",
              &hardness,
              {{"--hardness-mg-l", "100"}, {"--recovery-percent", "50"}},
              EX_OK,
              {"concentrate: hardness", "200 ± ", "not drinking water"}},
        Words{"NoPh",
              &hardness,
              {{"--hardness-mg-l", "100"}, {"--alkalinity-mg-l", "100"}},
              EX_USAGE,
              {"--ph", "all four"}}),
    name);

TEST(Hardness, WithoutConcentrateSaysNothingOfIt) {
  EXPECT_THAT(say(hardness, {{"--hardness-mg-l", "100"}}).text, Not(HasSubstr("concentrate")));
}

}  // namespace
}  // namespace tidewright::commands::reckon
