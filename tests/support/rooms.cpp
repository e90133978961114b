#include "tests/support/rooms.hpp"

#include <utility>

#include "core/rules/catalogue.hpp"

namespace tidewright::support {
namespace {

using room::Instrument;
using room::Place;
using room::Quantity;
using std::chrono::minutes;
using std::chrono::seconds;

Instrument instrument(const char* id, Quantity quantity, Place place, Duration every, double high,
                      double step) {
  Instrument i;
  i.id = id;
  i.quantity = quantity;
  i.place = place;
  i.where = id;
  i.reports_every = every;
  i.gross_high = i.plausible_high = high;
  i.step = step;
  return i;
}

}  // namespace

room::Room minimal_room() {
  room::Room room;
  room.id = "waterroom";
  room.instruments = {
      instrument("floor", Quantity::wetness, Place::floor, seconds{60}, 1, 0),
      instrument("level", Quantity::level, Place::vat, seconds{60}, 220, 2),
      instrument("product", Quantity::dissolved_solids, Place::product, minutes{5}, 5000, 1),
      instrument("feed", Quantity::dissolved_solids, Place::feed, minutes{5}, 5000, 1),
      instrument("warmth", Quantity::temperature, Place::room, seconds{60}, 60, 0.1),
      instrument("feedback", Quantity::feedback, Place::plug, minutes{1}, 1, 0),
  };
  room.instruments[feedback].on_change = true;
  room.instruments[feedback].reports_every = std::chrono::hours{25};
  room::Actuator booster;
  booster.id = "booster";
  booster.words = "the booster pump";
  booster.lease_kind = room::LeaseKind::plug;
  room.actuators = {booster};
  room.vat = room::Vat{.id = "pure",
                       .holds = "pure water",
                       .capacity = Litres{200},
                       .low = Litres{40},
                       .start_below = Litres{80},
                       .stop_at = Litres{180},
                       .enough = Litres{80},
                       .top_off_per_day = Litres{0}};
  room::Purifier purifier;
  purifier.driven_by = 0;
  purifier.rated = LitresPerHour{280.0 / 24};
  room.purifier = purifier;
  room.rules = rules::default_settings();
  return room;
}

room::Room attended_room() {
  room::Room room = minimal_room();
  room.instruments = {room.instruments[floor], room.instruments[feedback]};
  room.vat.reset();
  return room;
}

room::Room hours_room() {
  room::Room room = minimal_room();
  room.instruments = {room.instruments[floor], room.instruments[feedback],
                      instrument("full", Quantity::float_switch, Place::vat, seconds{60}, 1, 0)};
  room.vat->low = room.vat->start_below = room.vat->stop_at = std::nullopt;
  room.purifier->start_hours = room::Hours{8 * 60, 20 * 60};
  return room;
}

room::Room full_room() {
  room::Room room = minimal_room();
  room::Actuator valve = room.actuators[0];
  valve.id = "feed_valve";
  valve.words = "the feed valve";
  valve.role = room::Role::feed_valve;
  valve.lease = seconds{30};
  room.actuators.push_back(valve);
  room.instruments.push_back(
      instrument("full", Quantity::float_switch, Place::vat, seconds{60}, 1, 0));
  room.instruments.push_back(
      instrument("high_high", Quantity::float_switch, Place::vat_high_high, seconds{60}, 1, 0));
  room.instruments.push_back(
      instrument("permeate", Quantity::dissolved_solids, Place::permeate, minutes{5}, 5000, 1));
  room.instruments.push_back(
      instrument("power", Quantity::power, Place::plug, seconds{30}, 4000, 0.1));
  room.instruments.push_back(
      instrument("second_floor", Quantity::wetness, Place::floor, seconds{60}, 1, 0));
  Instrument valve_feedback = room.instruments[feedback];
  valve_feedback.id = "valve_feedback";
  valve_feedback.subject = 1;
  room.instruments.push_back(valve_feedback);
  room.purifier->lead_resin = Litres{1.5};
  room.vat->clean_every = std::chrono::days{180};
  room.vat->water_age_longest = std::chrono::days{60};
  room.supplies = {{.id = "salt",
                    .words = "sea salt",
                    .unit = "kg",
                    .order_below = 10,
                    .used_in_30_days = 3,
                    .used_per_1000_litres = 1}};
  return room;
}

room::Room metered_room() {
  room::Room room = full_room();
  Instrument gauge = room.instruments[level];
  gauge.id = "level_twin";
  gauge.twin_of = level;
  gauge.agrees_within = 6;
  Instrument meter = room.instruments[product];
  meter.id = "product_twin";
  meter.twin_of = product;
  meter.agrees_within = 2;
  room.instruments.push_back(gauge);
  room.instruments.push_back(meter);
  for (const auto& [id, place] : {std::pair{"feed_flow", Place::feed},
                                  {"product_flow", Place::product},
                                  {"concentrate_flow", Place::concentrate}}) {
    room.instruments.push_back(instrument(id, Quantity::flow, place, seconds{30}, 1000, 0.1));
  }
  return room;
}

room::Room whole_room() {
  room::Room room = full_room();
  room.mixing_vat =
      room::MixingVat{.capacity = Litres{100}, .low = Litres{20}, .stop_at = Litres{90}};
  room.instruments.push_back(
      instrument("mixing_level", Quantity::level, Place::mixing_vat, seconds{60}, 110, 1));
  room.instruments.push_back(
      instrument("mixing_warmth", Quantity::temperature, Place::mixing_vat, seconds{60}, 60, 0.1));
  room.instruments.push_back(
      instrument("concentrate", Quantity::float_switch, Place::concentrate, seconds{60}, 1, 0));
  for (std::size_t i = room.actuators.size(); i < room::role_count; ++i) {
    const auto role = static_cast<room::Role>(i);
    room::Actuator actuator = room.actuators[0];
    actuator.id = facts(role).name;
    actuator.words = "the " + std::string(facts(role).words);
    actuator.role = role;
    actuator.lease = facts(role).lease;
    room.actuators.push_back(actuator);
    Instrument answer = room.instruments[feedback];
    answer.id = actuator.id + "_feedback";
    answer.subject = static_cast<std::uint8_t>(i);
    room.instruments.push_back(answer);
  }
  return room;
}

}  // namespace tidewright::support
