#include <fmt/format.h>

#include <array>

#include "core/water/carbon_filter.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

// What of a rating is had from another water than the test's.
constexpr Known by_factor_of_two{0.5};

constexpr std::array options{
    Option{"against", Unit::text, "chlorine or chloramine: which the water supplier adds (needed)"},
    Option{"disinfectant", Unit::milligrams_per_litre,
           "of it in the tap water, as chlorine, by a test kit", 0.001, 20, true, by_kit},
    Option{"rated", Unit::litres, "litres that the filter is rated for, against this one", 1, 1e7,
           true},
    Option{"challenge", Unit::milligrams_per_litre,
           "at which it was rated; if left out 2 for chlorine, 3 for chloramine", 0.1, 10},
    Option{"relied-upon", Unit::percent, "what of the rating is relied upon; 50 if left out", 1,
           100, false, by_factor_of_two, 50},
    Option{"feed-per-day", Unit::litres, "water through the carbon in a day", 0.1, 1e6, false,
           by_marks},
    Option{"product-per-day", Unit::litres, "instead, with the recovery: litres made in a day", 0.1,
           1e6, false, by_marks},
    Option{"recovery", Unit::percent, "see `reckon membrane`", 1, 100, false, by_two_flows},
    Option{"passed", Unit::litres, "feed since it was fitted; the days x a day's if left out", 0,
           1e9, false, by_marks},
    Option{"in-use", Unit::days, "days since it was fitted; 0 if left out", 0, 36500},
    Option{
        "calendar", Unit::days,
        "days after which it is changed even so; if left out 365 for chlorine up to 1 mg/L, else "
        "183",
        1, 3650},
    Option{"behind", Unit::milligrams_per_litre, "what the last test behind the carbon found", 0,
           20},
    Option{"behind-allowed",
           Unit::milligrams_per_litre,
           "allowed there; 0.1 if left out",
           0.01,
           1,
           false,
           {},
           0.1}};

struct Against {
  const char* name;
  double challenge_mg_l;  // NSF/ANSI 42, from memory
};
constexpr Against chlorine{"chlorine", 2};
constexpr Against chloramine{"chloramine", 3};

// A maker's manual for reverse osmosis at the point of use: a year for chlorine up to 1 mg/L, half
// a year for more, and for chloramine.
double usual_calendar_days(const Against& against, double disinfectant_mg_l) {
  return against.name == chlorine.name && disinfectant_mg_l <= 1 ? 365 : 183;
}

std::variant<Litres, Refusal> feed_per_day(const Inputs& inputs) {
  if (inputs.has("feed-per-day-l")) return Litres{inputs["feed-per-day-l"]};
  if (!inputs.has("product-per-day-l") || !inputs.has("recovery-percent")) {
    return missing("--feed-per-day-l, or --product-per-day-l and --recovery-percent",
                   "how much water passes the carbon",
                   fmt::format("Type it, as here: {}", carbon.example));
  }
  const auto feed =
      water::feed_of_product({inputs["product-per-day-l"]}, inputs["recovery-percent"] / 100);
  if (!feed) return refused(*feed.outside());
  return *feed;
}

const char* words(water::CarbonEnd by) {
  if (by == water::CarbonEnd::litres) return "the litres";
  return by == water::CarbonEnd::calendar ? "the calendar" : "the test: too much comes through";
}

void add_warnings(const Against& against, Reckoned& reckoned) {
  reckoned.hints.emplace_back(
      "All feed passes the carbon, what goes to the drain as well. A test that finds nothing "
      "prolongs nothing: test every week or two.");
  reckoned.cautions.emplace_back(
      "The carbon is all that protects the membrane: what passes it destroys the membrane for "
      "good.");
  if (against.name == chloramine.name) {
    reckoned.cautions.emplace_back(
        "Chloramine needs two to five times the contact that chlorine needs (from memory), or "
        "catalytic carbon. A rating for chlorine says nothing of it. Test for total chlorine.");
  }
  reckoned.cautions.emplace_back(
      "Behind the carbon nothing protects the water from germs: do not drink what has stood in "
      "it.");
  reckoned.cautions.emplace_back(pressure_in_housings);
}

Outcome reckon_for(const Against& against, const Inputs& inputs, Litres feed) {
  const water::CarbonFilter filter{{inputs["rated-l"]},
                                   {inputs.value_or("challenge-mg-l", against.challenge_mg_l)},
                                   inputs["relied-upon-percent"] / 100};
  const MilligramsPerLitre disinfectant{inputs["disinfectant-mg-l"]};
  const auto capacity = water::carbon_capacity_grams(filter);
  const auto life = water::carbon_life(filter, feed, disinfectant);
  if (!capacity) return refused(*capacity.outside());
  if (!life) return refused(*life.outside());
  const double days = inputs.value_or("in-use-days", 0);
  water::CarbonUse use{
      {inputs.value_or("passed-l", days * feed.value)},
      feed,
      disinfectant,
      days,
      inputs.value_or("calendar-days", usual_calendar_days(against, disinfectant.value)),
      std::nullopt,
      {inputs["behind-allowed-mg-l"]}};
  if (inputs.has("behind-mg-l")) use.found_behind = MilligramsPerLitre{inputs["behind-mg-l"]};
  const auto left = water::carbon_left(filter, use);
  if (!left) return refused(*left.outside());
  Reckoned reckoned{
      {{"feed_per_day_l", "through the carbon a day", feed.value, Unit::litres, 1},
       {"capacity_g", "a fresh filter takes out", *capacity, Unit::grams, 2},
       {"litres", "and lasts for", life->feed_litres.value, Unit::litres, 0},
       {"days", "which is", life->days, Unit::days, 1},
       {"days_left", left->days > 0 ? "left" : "left: change it now", left->days, Unit::days, 1},
       {"ended_by", "ended by", std::string(words(left->by))}},
      "grams = rated litres x challenge x relied upon; days = grams / (feed a day x disinfectant); "
      "the earliest of litres, calendar and test counts",
      "arithmetic; challenges of NSF/ANSI 42 from memory; 0.1 mg/L at the membrane: FilmTec data "
      "sheet 45-D01511-en; calendar: a maker's manual for reverse osmosis at the point of use",
      "a rating is within a factor of 2 of your water: therefore half of it, and the test"};
  add_warnings(against, reckoned);
  return reckoned;
}

Outcome reckon_carbon(const Inputs& inputs) {
  const std::string text = inputs.text_or("against", "");
  if (text != chlorine.name && text != chloramine.name) {
    return unknown("--against", text.empty() ? "nothing" : fmt::format("`{}`", text),
                   "what the water supplier adds", "chlorine, chloramine",
                   "Ask the supplier; each needs a rating of its own.");
  }
  const auto feed = feed_per_day(inputs);
  if (const auto* refusal = std::get_if<Refusal>(&feed)) return *refusal;
  return reckon_for(text == chlorine.name ? chlorine : chloramine, inputs, std::get<Litres>(feed));
}

}  // namespace

const Quantity carbon{"carbon", "How long the carbon filter lasts: litres, calendar or test",
                      "tidewright reckon carbon --against chlorine --disinfectant-mg-l 1 "
                      "--rated-l 38000 --product-per-day-l 200 --recovery-percent 40 --in-use-days "
                      "20",
                      options, reckon_carbon};

}  // namespace tidewright::commands::reckon
