// What is protected, and what is not, where more is switched than the fill.
#include <fmt/format.h>

#include "config/protection_parts.hpp"
#include "core/report/phrases.hpp"

namespace tidewright::config {
namespace {

using report::actuator_words;
using report::number;
using room::Place;
using room::Quantity;
using room::Role;

class Cases {
 public:
  Cases(const room::Room& room, room::ActuatorIndex actuator, Protection& into)
      : room_(room),
        actuator_(room.actuators[actuator]),
        index_(actuator),
        it_(actuator_words(room, actuator)),
        into_(into) {}

  void gather() {
    silence();
    if (!room::find(room_, Quantity::feedback, index_)) {
      lacks(it_ + " does not obey", "nothing says so: its plug gives no feedback");
    }
    if (actuator_.role == Role::transfer_pump) transfer();
    if (actuator_.role == Role::mixing_pump) below_low();
    if (actuator_.role == Role::heater) {
      below_low();
      lacks("the mixing vat gets too warm", "only the heater's own thermostat helps");
    }
  }

 private:
  void has(std::string happening, std::string outcome) {
    into_.had.push_back({std::move(happening), std::move(outcome)});
  }
  void lacks(std::string happening, std::string outcome) {
    into_.not_had.push_back({std::move(happening), std::move(outcome)});
  }
  bool gauged() const { return room::find(room_, Quantity::level, Place::mixing_vat).has_value(); }

  void silence() {
    const std::string silent =
        "the daemon, the broker or the network stops while " + it_ + " is on";
    if (actuator_.lease_kind == room::LeaseKind::none) {
      return lacks(silent, "it stays on: nobody keeps its lease");
    }
    has(silent, fmt::format("it goes off by itself within {}, if that was set up as the file says",
                            report::lasting(actuator_.lease)));
    if (!facts(actuator_.role).moves_water || flow_at_most(room_, index_)) return;
    lacks(silent, "how many litres run until then is not known: give its `flow`");
  }

  void transfer() {
    if (room_.vat && room_.vat->low) {
      has(fmt::format("the vat falls below {} L", number(room_.vat->low->value)),
          it_ + " goes off");
    } else {
      lacks("the vat runs empty", it_ + " goes on: the file gives no `low`");
    }
    if (gauged() && room_.mixing_vat->stop_at) {
      has(fmt::format("the mixing vat reaches {} L", number(room_.mixing_vat->stop_at->value)),
          it_ + " goes off");
    } else {
      lacks("the mixing vat is full",
            "nothing switches " + it_ + " off but the minutes that you gave");
    }
  }

  void below_low() {
    if (gauged() && room_.mixing_vat->low) {
      has(fmt::format("the mixing vat falls below {} L", number(room_.mixing_vat->low->value)),
          it_ + " goes off");
    } else {
      lacks("the mixing vat is empty",
            "nothing switches " + it_ + " off but the minutes that you gave");
    }
  }

  const room::Room& room_;
  const room::Actuator& actuator_;
  room::ActuatorIndex index_;
  std::string it_;
  Protection& into_;
};

}  // namespace

void gather_actuators(const room::Room& room, Protection& into) {
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    if (facts(room.actuators[i].role).makes_water) continue;
    Cases{room, static_cast<room::ActuatorIndex>(i), into}.gather();
  }
  if (room::find(room, Quantity::float_switch, Place::concentrate)) {
    into.had.push_back({"the vat of the concentrate is full", "no water is made"});
  }
}

}  // namespace tidewright::config
