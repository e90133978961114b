// The household's water room as values: what stands in it and what it is allowed to do.
// Made once by config/reader and never changed while step() runs on it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/room/actuator.hpp"
#include "core/room/instrument.hpp"
#include "core/room/mixing_vat.hpp"
#include "core/room/purifier.hpp"
#include "core/room/rule.hpp"
#include "core/room/supply.hpp"
#include "core/room/vat.hpp"

namespace tidewright::room {

// step() keeps its state in arrays of these sizes; config/reader refuses a larger room.
inline constexpr std::size_t instruments_max = 32;
inline constexpr std::size_t actuators_max = 8;

using InstrumentIndex = std::uint8_t;
using ActuatorIndex = std::uint8_t;
using SupplyIndex = std::uint8_t;

struct Room {
  std::string id;
  std::vector<Instrument> instruments;
  std::vector<Actuator> actuators;
  std::optional<Vat> vat;
  std::optional<Purifier> purifier;
  std::optional<MixingVat> mixing_vat;
  std::vector<Supply> supplies;
  PerRule<RuleSettings> rules;
  bool accepts_no_leak_sensor = false;  // the file says so in words
};

// The first instrument of that quantity at that place, or none.
std::optional<InstrumentIndex> find(const Room&, Quantity, Place);
// The first instrument of that quantity that belongs to that actuator, or none.
std::optional<InstrumentIndex> find(const Room&, Quantity, ActuatorIndex);
// The actuator of that role, or none.
std::optional<ActuatorIndex> find(const Room&, Role);

// The actuator that drives the purifier, or none.
std::optional<ActuatorIndex> driving(const Room&);
// Whether a fill ends when the vat is full, by its float switch or by its gauge at STOP.
bool fills_to_a_mark(const Room&);
// Whether neither of the two can go on without the other, or both are one.
bool go_together(const Room&, ActuatorIndex, ActuatorIndex);
// How long after a command its feedback is due: the travel, 10 s for a sleepy mesh, and a report's
// wait where the feedback is sent by the clock.
Duration feedback_due(const Room&, ActuatorIndex);

}  // namespace tidewright::room
