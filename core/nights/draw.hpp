// A night drawn from a seed: wild habits and a few faults at a few moments.
#pragma once

#include <string>

#include "core/nights/night.hpp"

namespace tidewright::nights {

// An incident: six to eight hours around one to three faults, the water and the people that go with
// them. Same household, room and seed: same night for ever.
Night draw_incident(const std::string& household, const room::Room&, std::uint64_t seed);
// A whole day with up to six faults.
Night draw_day(const std::string& household, const room::Room&, std::uint64_t seed);

}  // namespace tidewright::nights
