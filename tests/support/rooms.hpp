// Rooms made in code, for tests that need one before any household file is read.
#pragma once

#include "core/room/room.hpp"

namespace tidewright::support {

// The instruments of the `minimal` room, by index.
enum Minimal : room::InstrumentIndex { floor, level, product, feed, warmth, feedback };

// A 200 L vat (START 80 L, STOP 180 L), one plug for booster and feed valve, whole-percent gauge.
room::Room minimal_room();

// What the full room has besides, by index.
enum Full : room::InstrumentIndex {
  full = feedback + 1,
  high_high,
  permeate,
  power,
  second_floor,
  valve_feedback
};

// Twelve instruments and two actuators on paths of their own: what the largest rung has.
room::Room full_room();

// What the metered room has besides, by index.
enum Metered : room::InstrumentIndex {
  level_twin = valve_feedback + 1,
  product_twin,
  feed_flow,
  product_flow,
  concentrate_flow
};

// The full room with twins of the gauge and of the product meter, and three flow meters.
room::Room metered_room();
// What the whole room has besides, by index.
enum Whole : room::InstrumentIndex {
  mixing_level = valve_feedback + 1,
  mixing_warmth,
  concentrate,
  fill_feedback,  // and those of the further actuators, in the order of Role
};

// The full room with one actuator of every role, in the order of Role, each with feedback, and a
// mixing vat of 100 L (low 20 L, stop 90 L).
room::Room whole_room();

// Rung 1a: a leak sensor and the plug; a person starts it for so many minutes.
room::Room attended_room();

// Rung 2: leak sensor, plug and a float switch that says "full"; starts from 8 to 20 o'clock.
room::Room hours_room();

}  // namespace tidewright::support
