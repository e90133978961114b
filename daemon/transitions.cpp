#include "daemon/transitions.hpp"

#include <fmt/format.h>

#include "core/report/report.hpp"

namespace tidewright {

std::vector<std::string> transitions(const room::Room& room, const State& before,
                                     const State& after) {
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    const state::Drive& drive = after.drives[i];
    if (drive.on == before.drives[i].on) continue;
    lines.push_back(fmt::format("{} {}: {}.", room.actuators[i].words, drive.on ? "ON" : "OFF",
                                report::words(room, drive.why)));
  }
  return lines;
}

}  // namespace tidewright
