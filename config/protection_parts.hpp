// The parts of a Protection that have a file of their own. For protection.cpp.
#pragma once

#include <optional>

#include "config/protection.hpp"

namespace tidewright::config {

// What is switched besides the fill.
void gather_actuators(const room::Room&, Protection& into);

// How people are told, and what no program can do.
void gather_people(const Household&, Protection& into);

// The most water that the actuator moves or lets through: as the file says it, or by the purifier's
// rated flow; none where neither is known.
std::optional<LitresPerHour> flow_at_most(const room::Room&, room::ActuatorIndex);

}  // namespace tidewright::config
