// Which key belongs to which thing of the household's file. Pure.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "config/household.hpp"
#include "daemon/hub/manifest.hpp"

namespace tidewright::hub {

// The parts of the household, each with the key that it had. A thing is known again by its name,
// else by the topic on which it speaks, else because it is the only one of its sort that is missing
// where only one is new. What is new gets a number that was never used; what is gone stays listed.
std::vector<Part> adopt(const config::Household&, std::vector<Part> known);

// The key of an instrument or supply that is present; the room's index.
const std::string& key_of(const std::vector<Part>&, const room::Room&, room::InstrumentIndex);
const std::string& supply_key_of(const std::vector<Part>&, const room::Room&, room::SupplyIndex);

}  // namespace tidewright::hub
