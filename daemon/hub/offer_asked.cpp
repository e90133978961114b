#include "daemon/hub/offer_asked.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/report/phrases.hpp"
#include "core/rules/catalogue.hpp"
#include "daemon/hub/askable.hpp"
#include "daemon/hub/json_text.hpp"
#include "daemon/hub/parts.hpp"

namespace tidewright::hub {
namespace {

using report::Thing;

// Who asks, as the journal and the answers name it.
constexpr std::string_view hub_itself = "hub";

struct Asking {
  const View& view;
  std::vector<Offer>& out;
  Place place{view.household.base, view.household.room.id};

  Offer& add(std::string_view verb, std::string key, Shape shape, std::string name) {
    Offer& offer = out.emplace_back();
    offer.key = std::move(key);
    offer.shape = shape;
    offer.name = std::move(name);
    offer.topic = place.topic(verb);
    return offer;
  }
};

std::string request(std::string_view verb, std::string_view what,
                    std::initializer_list<std::pair<std::string_view, std::string>> more = {}) {
  ObjectText object;
  object.add(verb, as_json(what)).add("who", as_json(hub_itself));
  for (const auto& [name, json] : more) object.add(name, json);
  return object.closed();
}

double occurrence_of(const Thing& alarm) {
  for (const report::Field& field : alarm.fields) {
    if (field.name == "occurrence") return std::get<double>(field.value);
  }
  return 0;
}

// Bound to the occurrence: a press that comes late quiets no new alarm.
void add_acknowledge(Asking& asking, const Thing& alarm, const rules::Rule& rule) {
  Offer& offer = asking.add("ask", fmt::format("acknowledge_{}", rule.name), Shape::press,
                            fmt::format("{}: acknowledge", rule.title));
  const double occurrence = std::max(1.0, occurrence_of(alarm));
  offer.request = request("ask", "acknowledge",
                          {{"alarm", as_json(rule.name)}, {"occurrence", decimal(occurrence, 0)}});
  offer.open_while = asking.place.topic(value_path(alarm, "to_acknowledge"));
}

// Two presses: the first arms, and only then can the second be pressed, which carries the token.
void add_reset(Asking& asking, const Thing& alarm, const rules::Rule& rule) {
  Offer& arm = asking.add("ask", fmt::format("reset_{}", rule.name), Shape::press,
                          fmt::format("{}: reset", rule.title));
  arm.request = request("ask", "reset", {{"alarm", as_json(rule.name)}});
  arm.open_while = asking.place.topic(value_path(alarm, "latched"));
  Offer& confirm = asking.add("ask", fmt::format("confirm_reset_{}", rule.name), Shape::press,
                              fmt::format("{}: confirm the reset", rule.title));
  const bool armed = std::any_of(alarm.fields.begin(), alarm.fields.end(), [](const auto& field) {
    return field.name == "reset_armed" && field.value == report::Value{true};
  });
  confirm.request = request(
      "ask", "confirm",
      {{"alarm", as_json(rule.name)}, {"token", std::to_string(armed ? asking.view.token : 1)}});
  confirm.open_while = asking.place.topic(value_path(alarm, "reset_armed"));
}

void add_alarms(Asking& asking) {
  for (const Thing& thing : asking.view.report.things) {
    if (thing.kind != "alarm") continue;
    const rules::Rule& rule = rules::rule(*rules::rule_named(thing.id));
    add_acknowledge(asking, thing, rule);
    if (rule.latching != rules::Latching::never) add_reset(asking, thing, rule);
  }
}

void add_press(Asking& asking, std::string_view verb, std::string_view what, std::string key,
               std::string name) {
  asking.add(verb, std::move(key), Shape::press, std::move(name)).request = request(verb, what);
}

// `before` is the request without its value, which a person types.
Offer& add_entry(Asking& asking, std::string key, std::string name, std::string before) {
  Offer& entry = asking.add("tell", std::move(key), Shape::entry, std::move(name));
  before.back() = ',';  // was the closing brace
  entry.request = before + R"("value":)";
  entry.request_end = "}";
  return entry;
}

void add_instruments(Asking& asking) {
  const room::Room& room = asking.view.household.room;
  for (std::size_t n = 0; n < room.instruments.size(); ++n) {
    const auto i = static_cast<room::InstrumentIndex>(n);
    const room::Instrument& instrument = room.instruments[n];
    const std::string& key = key_of(asking.view.parts, room, i);
    const std::string words = report::instrument_words(room, i);
    const std::string id = as_json(instrument.id);
    if (room::is_tried_by_hand(instrument)) {
      asking.add("tell", "tested_" + key, Shape::press, fmt::format("I have tried {}", words))
          .request = request("tell", "tested", {{"instrument", id}});
    }
    if (!can_be_measured(instrument.quantity)) continue;
    const std::string unit{report::unit(instrument.quantity)};
    Offer& entry =
        add_entry(asking, "measured_" + key, fmt::format("I have measured beside {}", words),
                  request("tell", "measured", {{"instrument", id}, {"unit", as_json(unit)}}));
    entry.unit = unit;
    entry.low = instrument.gross_low;
    entry.high = instrument.gross_high;
    entry.step = 0.1;
  }
}

void add_supplies(Asking& asking) {
  constexpr double most = 10'000;
  const room::Room& room = asking.view.household.room;
  for (std::size_t n = 0; n < room.supplies.size(); ++n) {
    const auto i = static_cast<room::SupplyIndex>(n);
    const room::Supply& supply = room.supplies[n];
    Offer& entry = add_entry(asking, "stocked_" + supply_key_of(asking.view.parts, room, i),
                             fmt::format("I have counted: {}", supply.words),
                             request("tell", "stocked", {{"supply", as_json(supply.id)}}));
    entry.unit = supply.unit;
    entry.high = most;
    entry.step = 0.1;
  }
}

}  // namespace

void add_asked(const View& view, std::vector<Offer>& out) {
  Asking asking{view, out};
  const room::Room& room = view.household.room;
  add_alarms(asking);
  if (room::fills_to_a_mark(room)) {
    add_press(asking, "ask", "start", "start_make_water", "Make water: start");
    add_press(asking, "ask", "stop", "stop_make_water", "Make water: stop");
  }
  add_press(asking, "ask", "test", "test_announcement", "Send a test announcement");
  if (room.purifier && room.purifier->lead_resin) {
    add_press(asking, "tell", "rotated", "rotated", "I have rotated the canisters");
    add_press(asking, "tell", "replaced", "replaced", "I have replaced all the resin");
  }
  if (room.vat) add_press(asking, "tell", "cleaned", "cleaned", "I have cleaned the vat");
  add_instruments(asking);
  add_supplies(asking);
  asking.add("announcement", "announcement", Shape::story, "Announcement");
}

}  // namespace tidewright::hub
