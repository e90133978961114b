#include <fmt/format.h>

#include <algorithm>

#include "config/reader/instruments.hpp"
#include "config/reader/nearest.hpp"
#include "config/reader/wording.hpp"

namespace tidewright::config {
namespace {

// Index of the section that `key` names; a problem if there is none.
std::optional<std::uint8_t> named(Draft& draft, std::string_view key,
                                  const std::vector<Section>& sections, std::string_view kind) {
  const Value* name = draft.purifier->told(key);
  if (name == nullptr) return std::nullopt;
  std::vector<std::string_view> ids;
  ids.reserve(sections.size());
  for (const Section& section : sections) ids.push_back(section.id());
  const auto found = std::find(ids.begin(), ids.end(), name->text);
  if (found != ids.end()) return static_cast<std::uint8_t>(found - ids.begin());
  draft.problems.add(
      name->at,
      fmt::format("`{}` is \"{}\", but there is no [{}.{}]; expected {}{}", key, name->text, kind,
                  name->text,
                  ids.empty() ? fmt::format("a section [{}.<id>]", kind) : quoted_list(ids, "or"),
                  did_you_mean(nearest(name->text, ids), "\"")),
      fmt::format("`{}` names a section of this file.", key));
  return std::nullopt;
}

void read_meters(Draft& draft) {
  struct Meter {
    const char* key;
    room::Place place;
    const char* where;
  };
  for (const Meter& meter :
       {Meter{"feed_tds", room::Place::feed, "before the membrane"},
        Meter{"permeate_tds", room::Place::permeate, "between membrane and resin"},
        Meter{"lead_outlet_tds", room::Place::lead_outlet, "between the two canisters"},
        Meter{"product_tds", room::Place::product, "after the resin"}}) {
    const Section* table = draft.purifier->table(meter.key);
    if (table == nullptr) continue;
    add_instrument(draft, *table,
                   {.quantity = room::Quantity::dissolved_solids,
                    .place = meter.place,
                    .id = meter.key,
                    .where = meter.where});
  }
}

// A meter whose unit is a volume counts.
bool counts(const Section& meter) {
  const Value* unit = meter.told("unit");
  if (unit == nullptr) return false;
  const auto words = unit_words();
  const auto found = std::find_if(words.begin(), words.end(), [&](const UnitWord& word) {
    return word.word == unit->node.text;
  });
  return found != words.end() && found->dimension == Dimension::volume;
}

void read_water_meters(Draft& draft) {
  struct Meter {
    const char* key;
    room::Place place;
    const char* where;
  };
  for (const Meter& meter : {Meter{"feed_flow", room::Place::feed, "before the membrane"},
                             Meter{"product_flow", room::Place::product, "after the resin"},
                             Meter{"concentrate_flow", room::Place::concentrate, "its drain"}}) {
    const Section* table = draft.purifier->table(meter.key);
    if (table == nullptr) continue;
    add_instrument(draft, *table,
                   {.quantity = counts(*table) ? room::Quantity::water_count : room::Quantity::flow,
                    .place = meter.place,
                    .id = meter.key,
                    .where = meter.where});
  }
  const Section* pressure = draft.purifier->table("feed_pressure");
  if (pressure == nullptr) return;
  add_instrument(draft, *pressure,
                 {.quantity = room::Quantity::pressure,
                  .place = room::Place::feed,
                  .id = "feed_pressure",
                  .where = "before the pump"});
}

void read_concentrate(Draft& draft) {
  const Section* full = draft.purifier->table("concentrate_full");
  if (full == nullptr) return;
  add_instrument(draft, *full,
                 {.quantity = room::Quantity::float_switch,
                  .place = room::Place::concentrate,
                  .id = "concentrate_full",
                  .where = "the vat of the concentrate"});
}

// What a fill may be driven by: the interlock holds the others for other reasons.
void check_driver(Draft& draft, room::ActuatorIndex driver) {
  const Section& actuator = draft.actuators[driver];
  if (facts(draft.household.room.actuators[driver].role).makes_water) return;
  draft.problems.add(draft.purifier->at("driven_by"),
                     fmt::format("`driven_by` is \"{}\", which is a {}; expected a booster pump or "
                                 "a valve in the water's way",
                                 actuator.id(), actuator.text("role")),
                     "Name the actuator without which no water is made.");
}

room::WaterStopsWith water_stops_with(const std::string& word) {
  if (word == "valve") return room::WaterStopsWith::valve;
  return word == "pump" ? room::WaterStopsWith::pump : room::WaterStopsWith::nothing;
}

room::Purifier purifier_of(const Section& from) {
  room::Purifier purifier;
  purifier.water_stops_with = water_stops_with(from.text("water_stops_with"));
  purifier.rated = {from.number("rated")};
  purifier.flow_lowest_credible = from.number("flow_lowest_credible");
  purifier.notify_at = {from.number("notify_ppm")};
  purifier.stop_at = {from.number("stop_ppm")};
  purifier.on_breakthrough = from.text("on_breakthrough") == "stop_pump"
                                 ? room::OnBreakthrough::stop_pump
                                 : room::OnBreakthrough::notify;
  purifier.product_flush = duration(from, "product_flush");
  purifier.permeate_settles = duration(from, "permeate_settles");
  purifier.judged_over = duration(from, "judged_over");
  purifier.judged_litres = {from.number("judged_volume")};
  if (const Value* hours = from.told("start_hours")) {
    purifier.start_hours = room::Hours{hours->from, hours->to};
  }
  purifier.frost_below = {from.number("frost_below")};
  purifier.feed_pressure_low = {from.number("feed_pressure_low")};
  purifier.hot_above = {from.number("hot_above")};
  purifier.rejection_low = from.number("rejection_low");
  purifier.feed_change = from.number("feed_change");
  if (from.told("resin") != nullptr) purifier.lead_resin = Litres{from.number("resin")};
  purifier.carbon_dioxide = {from.number("carbon_dioxide_ppm")};
  purifier.resin_told_before = duration(from, "resin_told_before");
  return purifier;
}

void check_resin(Draft& draft) {
  const Section& from = *draft.purifier;
  if (!from.mentions("resin")) return;
  for (const std::string_view key : {"permeate_tds", "driven_by"}) {
    if (from.mentions(key)) continue;
    draft.problems.add(from.at("resin"),
                       fmt::format("`resin` is given, but [purifier] has no `{}`; expected it "
                                   "beside",
                                   key),
                       "The resin's end is forecast from the water that is made and what the "
                       "membrane lets through.");
  }
}

void check_breakthrough(Draft& draft) {
  const Section& from = *draft.purifier;
  const Value* notify = from.value("notify_ppm");
  const Value* stop = from.value("stop_ppm");
  if (notify != nullptr && stop != nullptr && stop->number < notify->number) {
    draft.problems.add(
        from.at(stop->told ? "stop_ppm" : "notify_ppm"),
        fmt::format("`stop_ppm` is \"{}\", below `notify_ppm` \"{}\"; expected it at "
                    "or above",
                    stop->text, notify->text),
        "You are told first, then the pump stops.");
  }
  if (from.text("on_breakthrough") != "stop_pump") return;
  for (const std::string_view key : {"product_tds", "driven_by"}) {
    if (from.mentions(key)) continue;
    draft.problems.add(
        from.at("on_breakthrough"),
        fmt::format("`on_breakthrough` is \"stop_pump\", but [purifier] has no `{}`; "
                    "expected it beside",
                    key),
        "The pump can be stopped only by what is measured and what is switched.");
  }
}

}  // namespace

void read_purifier(Draft& draft) {
  if (!draft.purifier) return;
  const Section& from = *draft.purifier;
  room::Purifier purifier = purifier_of(from);
  const auto actuator = named(draft, "driven_by", draft.actuators, "actuator");
  if (actuator) {
    purifier.driven_by = *actuator;
    check_driver(draft, *actuator);
  }
  named(draft, "fills", draft.vats, "vat");
  if (!draft.vats.empty() && !from.mentions("fills")) {
    draft.problems.add(
        from.at(),
        fmt::format("`fills` is missing in [purifier]; expected the vat's name, such "
                    "as \"{}\"",
                    draft.vats.front().id()),
        "The vat that it fills.");
  }
  check_breakthrough(draft);
  check_resin(draft);
  read_meters(draft);
  read_water_meters(draft);
  read_concentrate(draft);
  draft.household.room.purifier = purifier;
}

}  // namespace tidewright::config
