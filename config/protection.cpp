#include "config/protection.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "config/at_stake.hpp"
#include "config/protection_parts.hpp"
#include "core/report/phrases.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright::config {
namespace {

using report::actuator_words;
using report::lasting;
using report::number;
using room::Place;
using room::Quantity;

// One room's cases, gathered thing by thing.
class Cases {
 public:
  Cases(const Household& household, Protection& into) : room_(household.room), into_(into) {}

  void gather() {
    leak();
    if (driven_) {
      silence();
      water_after_off();
      obedience();
    }
    flow_when_off();
    filling();
    supply();
    quality();
    frost();
    upkeep();
  }

 private:
  void has(std::string happening, std::string outcome) {
    into_.had.push_back({std::move(happening), std::move(outcome)});
  }
  void lacks(std::string happening, std::string outcome) {
    into_.not_had.push_back({std::move(happening), std::move(outcome)});
  }
  std::string pump() const { return actuator_words(room_, *driven_); }

  bool has_water_meter() const {
    return std::any_of(room_.instruments.begin(), room_.instruments.end(), [](const auto& i) {
      return i.quantity == Quantity::flow || i.quantity == Quantity::water_count;
    });
  }

  // A second witness, where there is one; without it the leak sensor and the gauge must do.
  void flow_when_off() {
    if (!has_water_meter() || !room_.purifier) return;
    if (room_.purifier->water_stops_with == room::WaterStopsWith::valve) {
      has("water flows although everything is off",
          "you are told as of a leak, and everything stays off until somebody has looked");
    } else {
      lacks("water flows although everything is off",
            "nobody is told: where no valve stops the water, it may");
    }
  }

  void leak() {
    bool any = false;
    for (std::size_t i = 0; i < room_.instruments.size(); ++i) {
      const room::Instrument& sensor = room_.instruments[i];
      if (sensor.quantity != Quantity::wetness) continue;
      any = true;
      const std::string& place = sensor.where;
      if (sensor.on_change) {
        const auto minutes = std::chrono::duration_cast<std::chrono::minutes>(sensor.reports_every);
        lacks(fmt::format("the leak sensor at {} dies without a word", place),
              fmt::format("nothing notices it for up to {} ({} min), for it speaks on change only",
                          lasting(sensor.reports_every), minutes.count()));
        if (driven_) {
          lacks("the daemon or its machine crashes",
                fmt::format("nothing runs until the leak sensor at {} has spoken, which may take "
                            "{}; wet and dry it to make it speak sooner",
                            place, lasting(sensor.reports_every)));
        }
      }
      if (!driven_) {
        has(fmt::format("{} gets wet", place), "you are told at once");
        continue;
      }
      has(fmt::format("{} gets wet", place),
          fmt::format("{} goes off at once and stays off until somebody has looked and says so",
                      pump()));
      if (!sensor.on_change) {
        has(fmt::format("the leak sensor at {} is silent for {}", place,
                        lasting(room::stale_after(sensor))),
            fmt::format("{} goes off", pump()));
      }
    }
    if (!any) lacks("water runs out on the floor", "nothing notices it: there is no leak sensor");
    if (any && !driven_) lacks("water runs out", "nothing stops it but you: no pump is switched");
    if (any) lacks("water runs where no leak sensor lies", "nothing notices it");
  }

  void silence() {
    const room::Actuator& actuator = room_.actuators[*driven_];
    if (actuator.lease_kind == room::LeaseKind::none) {
      lacks("the daemon, the broker or the network stops while " + pump() + " is on",
            "it stays on: nobody keeps its lease");
      return;
    }
    has("the daemon, the broker or the network stops while " + pump() + " is on",
        fmt::format("it goes off by itself within {}, if that was set up as the file says",
                    lasting(actuator.lease)));
  }

  void water_after_off() {
    switch (room_.purifier->water_stops_with) {
      case room::WaterStopsWith::valve:
        has(pump() + " is off", "the feed valve stops the water");
        break;
      case room::WaterStopsWith::pump:
        lacks("the stopped pump lets line pressure through",
              "water keeps coming, slowly: close the feed cock, or add a normally-closed feed "
              "valve");
        break;
      case room::WaterStopsWith::nothing:
        lacks(pump() + " is off",
              "line pressure keeps pushing water: close the feed cock, or add a normally-closed "
              "feed valve");
    }
  }

  void obedience() {
    if (room::find(room_, Quantity::feedback, *driven_)) {
      has(pump() + " does not obey", "you are told, and OFF is sent again");
    } else {
      lacks(pump() + " does not obey", "nothing says so: its plug gives no feedback");
    }
    if (const auto second = second_way()) {
      has("the relay in that plug sticks",
          fmt::format("{} goes off too", actuator_words(room_, *second)));
    } else {
      lacks("the relay in that plug sticks",
            "there is no second way to stop the water: pull the plug out and close the feed cock");
    }
    if (room::find(room_, Quantity::power, *driven_)) {
      has(pump() + " runs dry or blocked", "its power shows it, and it goes off");
    } else if (room::find(room_, Quantity::pressure, Place::feed)) {
      has(pump() + " runs dry", "the feed pressure shows it, and it goes off");
    } else {
      lacks(pump() + " runs dry or blocked", "nothing notices it: its power is not measured");
    }
  }

  // What else stands in the water's way to the vat.
  std::optional<room::ActuatorIndex> second_way() const {
    for (std::size_t i = 0; i < room_.actuators.size(); ++i) {
      if (i == *driven_ || !facts(room_.actuators[i].role).makes_water) continue;
      return static_cast<room::ActuatorIndex>(i);
    }
    return std::nullopt;
  }

  void filling() {
    if (!driven_) return;
    const bool gauge = room_.vat && room_.vat->stop_at &&
                       room::find(room_, Quantity::level, Place::vat).has_value();
    const bool full = room::find(room_, Quantity::float_switch, Place::vat).has_value();
    if (gauge) {
      has(fmt::format("the vat reaches {} L", number(room_.vat->stop_at->value)),
          pump() + " goes off");
      has("the gauge sticks or falls silent", pump() + " goes off");
    }
    if (full) has("the float switch says full", pump() + " goes off");
    if (!gauge && !full) {
      lacks("the vat is full", "nothing switches " + pump() +
                                   " off but the minutes that you gave: only the float valve in "
                                   "the vat holds the water back");
    }
    if (room::find(room_, Quantity::float_switch, Place::vat_high_high)) {
      has("the vat is overfilled to its highest switch",
          pump() + " goes off and stays off until somebody has looked");
    } else if (gauge || full) {
      lacks("the gauge or the float switch shows too little",
            "only the float valve in the vat holds the water back: there is no high-high switch");
    }
  }

  // No water is harm too.
  void supply() {
    if (!room::find(room_, Quantity::level, Place::vat)) return;
    if (room_.vat->low) {
      has(fmt::format("the vat falls below {} L", number(room_.vat->low->value)), "you are told");
    } else if (room_.vat->top_off_per_day.value > 0) {
      has("the vat holds less than three days of top-off", "you are told");
    } else {
      lacks("the vat runs empty",
            "nobody tells you: the file gives neither low nor "
            "top_off_per_day");
    }
  }

  void quality() {
    const bool product = room::find(room_, Quantity::dissolved_solids, Place::product).has_value();
    const bool permeate =
        room::find(room_, Quantity::dissolved_solids, Place::permeate).has_value();
    if (!room_.purifier) return;
    if (!product) {
      lacks("the resin is spent", "nothing notices it: the product is not measured");
      return;
    }
    const bool stops = room_.purifier->on_breakthrough == room::OnBreakthrough::stop_pump;
    has(fmt::format("the product reads {} ppm or more", number(room_.purifier->notify_at.value)),
        "you are told");
    if (stops) {
      has(fmt::format("the product reads {} ppm or more", number(room_.purifier->stop_at.value)),
          pump() + " goes off");
    } else if (driven_) {
      lacks("the product is bad", "the fill goes on: on_breakthrough is \"notify\"");
    }
    if (!permeate) {
      lacks("the product is bad",
            "it is not known whether membrane or resin is to blame: no meter between them");
    }
  }

  void frost() {
    if (!driven_) return;
    if (room::find(room_, Quantity::temperature, Place::room) ||
        room::find(room_, Quantity::temperature, Place::feed)) {
      has(fmt::format("it is colder than {} °C", number(room_.purifier->frost_below.value)),
          "nothing starts, and you are told");
    } else {
      lacks("the room freezes", "nothing notices it: there is no thermometer");
    }
  }

  // What would be noticed only when it is too late.
  void upkeep() {
    if (driven_) {
      const bool permeate =
          room::find(room_, Quantity::dissolved_solids, Place::permeate).has_value();
      if (permeate && room_.purifier->lead_resin) {
        has("the resin nears its end", "you are told before");
      } else {
        lacks("the resin nears its end",
              fmt::format("nobody tells you before: {}",
                          permeate ? "the file does not say how much `resin` there is"
                                   : "there is no meter between membrane and resin"));
      }
    }
    if (room_.vat && !room_.vat->clean_every) {
      lacks("the vat needs cleaning", "nobody tells you: the file gives no clean_every");
    }
    if (room_.supplies.empty()) {
      lacks("salt, resin or cartridges run out",
            "nobody tells you: the file has no [supply.<name>]");
    }
  }

  const room::Room& room_;
  Protection& into_;
  std::optional<room::ActuatorIndex> driven_ = room::driving(room_);
};

}  // namespace

Protection protection(const Household& household) {
  Protection result;
  Cases{household, result}.gather();
  gather_actuators(household.room, result);
  gather_people(household, result);
  result.at_stake = at_stake(household.room);
  result.rises = rises(household);
  for (const rules::Rule* rule : rules::catalogue) {
    auto& names = rule->applies(household.room) ? result.alarms : result.alarms_not;
    names.emplace_back(rule->name);
  }
  return result;
}

}  // namespace tidewright::config
