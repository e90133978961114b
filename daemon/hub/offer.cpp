#include "daemon/hub/offer.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "core/report/phrases.hpp"
#include "core/rules/catalogue.hpp"
#include "daemon/hub/offer_asked.hpp"
#include "daemon/hub/offer_rows.hpp"
#include "daemon/hub/parts.hpp"

namespace tidewright::hub {
namespace {

using report::Field;
using report::Thing;
using room::Quantity;
using room::Room;

// Offers of one thing, each with the key `<begin>_<field>` and the topic of its plain value.
class OffersOf {
 public:
  OffersOf(const View& view, const Thing& thing, std::string key_begin, std::vector<Offer>& out)
      : place_{view.household.base, view.household.room.id},
        thing_(thing),
        key_begin_(std::move(key_begin)),
        out_(out) {}

  // None if the thing has no such field.
  Offer* add(std::string_view name_of_field, Shape shape, std::string name) {
    const auto field = std::find_if(thing_.fields.begin(), thing_.fields.end(),
                                    [&](const Field& each) { return each.name == name_of_field; });
    if (field == thing_.fields.end()) return nullptr;
    Offer& offer = out_.emplace_back();
    offer.key = fmt::format("{}_{}", key_begin_, name_of_field);
    offer.node = key_begin_;
    offer.shape = shape;
    offer.name = std::move(name);
    offer.topic = place_.topic(value_path(thing_, name_of_field));
    offer.field = &*field;
    return &offer;
  }
  std::string online(const room::Instrument& instrument) const {
    return place_.topic("source/" + instrument.id + "/online");
  }

 private:
  Place place_;
  const Thing& thing_;
  std::string key_begin_;
  std::vector<Offer>& out_;
};

std::string capital(std::string words) {
  if (words.starts_with("the ")) words.erase(0, 4);
  if (!words.empty() && words[0] >= 'a' && words[0] <= 'z') words[0] -= 'a' - 'A';
  return words;
}

// Of each instrument that the value is made from; none where twins stand in for each other, for
// the value then tells by itself whether there is one.
void need_sources(const Room& room, std::span<const MadeFrom> from, const OffersOf& of,
                  Offer& offer) {
  for (const MadeFrom& each : from) {
    const auto is_it = [&](const room::Instrument& i) {
      return i.quantity == each.quantity && i.place == each.place;
    };
    if (std::count_if(room.instruments.begin(), room.instruments.end(), is_it) != 1) continue;
    offer.sources.push_back(
        of.online(*std::find_if(room.instruments.begin(), room.instruments.end(), is_it)));
  }
}

bool is_installed(const Room& room, const Row& row) {
  const auto there = [&](const MadeFrom& from) {
    return room::find(room, from.quantity, from.place).has_value();
  };
  return std::all_of(row.from.begin(), row.from.end(), there) &&
         (row.applies == nullptr || row.applies(room));
}

void add_rows(const View& view, const Thing& thing, const std::string& name_begin, OffersOf of) {
  const Room& room = view.household.room;
  for (const Row& row : offer_rows()) {
    if (row.thing != thing.kind || !is_installed(room, row)) continue;
    Offer* offer = of.add(row.field, row.shape, name_begin + std::string(row.name));
    if (offer == nullptr) continue;
    offer->unit = row.unit;
    offer->meaning = row.meaning;
    offer->aside = row.aside;
    offer->options.assign(row.options.begin(), row.options.end());
    need_sources(room, row.from, of, *offer);
  }
}

void add_actuator(const View& view, const Thing& thing, std::vector<Offer>& out) {
  const Room& room = view.household.room;
  const auto found = std::find_if(room.actuators.begin(), room.actuators.end(),
                                  [&](const room::Actuator& a) { return a.id == thing.id; });
  const auto i = static_cast<room::ActuatorIndex>(found - room.actuators.begin());
  const std::string name = capital(report::actuator_words(room, i));
  OffersOf of(view, thing, "actuator_" + std::string(room::facts(found->role).name), out);
  if (const auto feedback = room::find(room, Quantity::feedback, i)) {
    Offer& offer = *of.add("confirmed", Shape::fact, name);
    offer.meaning = "running";
    offer.sources = {of.online(room.instruments[*feedback])};
  }
  if (const auto power = room::find(room, Quantity::power, i)) {
    Offer& offer = *of.add("power_w", Shape::measure, name + ": power");
    offer.meaning = "power";
    offer.unit = "W";
    offer.sources = {of.online(room.instruments[*power])};
  }
  add_rows(view, thing, name + ": ", of);
}

void add_alarm(const View& view, const Thing& thing, std::vector<Offer>& out) {
  const rules::Rule& rule = rules::rule(*rules::rule_named(thing.id));
  OffersOf of(view, thing, "alarm_" + thing.id, out);
  of.add("active", Shape::fact, std::string(rule.title))->meaning = "problem";
  if (rule.latching == rules::Latching::never) return;
  of.add("latched", Shape::fact, fmt::format("{}: holds off", rule.title))->meaning = "problem";
}

std::string_view meaning_of(Quantity quantity) {
  switch (quantity) {
    case Quantity::wetness:
      return "moisture";
    case Quantity::level:
      return "volume_storage";
    case Quantity::temperature:
      return "temperature";
    case Quantity::power:
      return "power";
    case Quantity::pressure:
      return "pressure";
    default:
      return "";
  }
}

// The value, how far it is believed, and whether it speaks.
void add_source(const View& view, const Thing& thing, std::vector<Offer>& out) {
  const Room& room = view.household.room;
  const auto found = std::find_if(room.instruments.begin(), room.instruments.end(),
                                  [&](const room::Instrument& i) { return i.id == thing.id; });
  const auto i = static_cast<room::InstrumentIndex>(found - room.instruments.begin());
  const std::string name = capital(report::instrument_words(room, i));
  OffersOf of(view, thing, key_of(view.parts, room, i), out);
  const std::string online = of.online(*found);
  const bool is_switch = report::unit(found->quantity).empty();
  Offer& value = *of.add(thing.fields[1].name, is_switch ? Shape::fact : Shape::measure, name);
  value.meaning = meaning_of(found->quantity);
  value.unit = report::unit(found->quantity);
  value.sources = {online};
  value.aside = found->quantity != Quantity::wetness && found->quantity != Quantity::temperature &&
                found->quantity != Quantity::float_switch;
  Offer& quality = *of.add("quality", Shape::word, name + ": quality");
  quality.meaning = "enum";
  quality.options = {"good", "uncertain", "bad"};
  quality.aside = true;
  Offer& speaks = *of.add("online", Shape::fact, name + ": speaks");
  speaks.meaning = "connectivity";
  speaks.aside = true;
}

void add_supply(const View& view, const Thing& thing, std::vector<Offer>& out) {
  const Room& room = view.household.room;
  const auto found = std::find_if(room.supplies.begin(), room.supplies.end(),
                                  [&](const room::Supply& s) { return s.id == thing.id; });
  const auto i = static_cast<room::SupplyIndex>(found - room.supplies.begin());
  const std::string name = capital(found->words);
  OffersOf of(view, thing, supply_key_of(view.parts, room, i), out);
  Offer& stock = *of.add("in_stock", Shape::measure, name + ": in stock");
  stock.unit = found->unit;
  if (found->unit == "kg" || found->unit == "g") stock.meaning = "weight";
  of.add("low", Shape::fact, name + ": to be ordered")->meaning = "problem";
  Offer& order = *of.add("order_by", Shape::day, name + ": order by");
  order.meaning = "date";
}

}  // namespace

std::vector<Offer> offers(const View& view) {
  std::vector<Offer> out;
  for (const Thing& thing : view.report.things) {
    if (thing.kind == "actuator") {
      add_actuator(view, thing, out);
    } else if (thing.kind == "alarm") {
      add_alarm(view, thing, out);
    } else if (thing.kind == "source") {
      add_source(view, thing, out);
    } else if (thing.kind == "supply") {
      add_supply(view, thing, out);
    } else if (thing.kind == "way") {
      add_rows(view, thing, fmt::format("Telling people by {}: ", thing.id),
               OffersOf(view, thing, "way_" + thing.id, out));
    } else {
      add_rows(view, thing, "", OffersOf(view, thing, thing.kind, out));
    }
  }
  add_asked(view, out);
  return out;
}

}  // namespace tidewright::hub
