#include <algorithm>
#include <array>

#include "core/water/sediment_filter.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr water::SedimentLimits usual;

// Two gauges that were set alike, or one that is moved: common practice.
constexpr Known by_difference{0, 0.1};

constexpr std::array options{
    Option{"clean-drop", Unit::bar, "gauge before less gauge behind, when the filter was new", 0,
           20, true, by_difference},
    Option{"clean-feed", Unit::litres_per_hour, "at that flow: permeate and concentrate together",
           0.01, 1e5, true, by_bucket_and_clock},
    Option{"drop", Unit::bar, "gauge before less gauge behind, now", 0, 20, true, by_difference},
    Option{"feed", Unit::litres_per_hour, "at that flow", 0.01, 1e5, true, by_bucket_and_clock},
    Option{"limit",
           Unit::bar,
           "drop at which it is changed at the latest; 1 if left out",
           0.01,
           20,
           false,
           {},
           usual.drop.value},
    Option{"rise",
           Unit::bar,
           "or so much above the clean drop; 0.7 if left out",
           0.01,
           20,
           false,
           {},
           usual.above_clean.value},
    Option{"in-use", Unit::days, "days since it was fitted: then also by the calendar", 0, 36500},
    Option{"calendar",
           Unit::days,
           "days after which it is changed even so; 365 if left out",
           1,
           3650,
           false,
           {},
           365}};

Outcome reckon_sediment(const Inputs& inputs) {
  const Bars clean{inputs["clean-drop-bar"]};
  const LitresPerHour clean_flow{inputs["clean-feed-l-h"]};
  const Bars drop{inputs["drop-bar"]};
  const LitresPerHour flow{inputs["feed-l-h"]};
  const auto now = water::drop_at_flow(drop, flow, clean_flow);
  if (!now) return refused(*now.outside());
  const water::SedimentLimits limits{{inputs["limit-bar"]}, {inputs["rise-bar"]}};
  const auto used = water::clogging(clean, clean_flow, drop, flow, limits);
  if (!used) return refused(*used.outside());
  const double days_left =
      std::max(0.0, inputs["calendar-days"] - inputs.value_or("in-use-days", 0));
  Reckoned reckoned{
      {{"drop_at_clean_flow_bar", "drop, at the clean one's flow", now->value, Unit::bar, 3},
       {"used_percent", "of the allowed rise", 100 * *used, Unit::percent, 1},
       {"change_at_bar", "change it at",
        std::min(limits.drop.value, (clean + limits.above_clean).value), Unit::bar, 2}},
      "drop at the clean one's flow = drop x (flow then / now)^1.5; used = (drop - clean) / "
      "allowed rise",
      "the power: normalised differential pressure, desalination wiki of the University of New "
      "South Wales; 1 bar: a maker of industrial cartridges; a year: a maker's manual for "
      "reverse osmosis at the point of use; 0.7 bar above clean: common practice",
      "the power is between 1 and 2: 20 % for flows within a factor of 1.5 of each other; read "
      "both at one flow and it drops out"};
  if (inputs.has("in-use-days")) {
    reckoned.results.push_back(
        {"calendar_days_left", "left by the calendar", days_left, Unit::days, 0});
  }
  const bool spent = *used >= 1 || days_left <= 0;
  reckoned.results.push_back(
      {"to_do", "what to do", std::string(spent ? "change it now" : "leave it")});
  if (*now < clean) {
    reckoned.hints.emplace_back(
        "Less drop than when it was clean: a seal is not tight, the cartridge is not in its place, "
        "or a gauge is wrong.");
  }
  reckoned.hints.emplace_back(
      "A filter that clogs within weeks on one tap's water tells of the pipes: ask the supplier.");
  reckoned.cautions.emplace_back(pressure_in_housings);
  return reckoned;
}

}  // namespace

const Quantity sediment{"sediment", "How clogged the sediment filter is, by its pressure drop",
                        "tidewright reckon sediment --clean-drop-bar 0.15 --clean-feed-l-h 48 "
                        "--drop-bar 0.4 --feed-l-h 45 --in-use-days 120",
                        options, reckon_sediment};

}  // namespace tidewright::commands::reckon
