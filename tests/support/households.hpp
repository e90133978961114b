// The households of config/, read as the daemon reads them.
#pragma once

#include <string>
#include <vector>

#include "core/room/room.hpp"

namespace tidewright::support {

struct Household {
  std::string name;  // of its file
  room::Room room;
};

// All of config/*.toml, by name. Throws if one is not understood.
std::vector<Household> households();
// One of them by its file's name. Throws if there is none.
const Household& household_named(const std::vector<Household>&, const std::string& name);

}  // namespace tidewright::support
