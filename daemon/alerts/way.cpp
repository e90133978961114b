#include "daemon/alerts/way.hpp"

namespace tidewright::alerts {

report::Thing thing(const Standing& standing, const WallClock& wall) {
  using report::Value;
  const Value arrived = standing.arrived == long_ago
                            ? Value{report::Unknown{}}
                            : Value{report::wall_time(standing.arrived, wall)};
  return {"way",
          std::string(post::name(standing.way)),
          {{"open", standing.trouble.empty()},
           {"waiting", static_cast<double>(standing.waiting), 0},
           {"arrived", arrived},
           {"trouble", standing.trouble}}};
}

}  // namespace tidewright::alerts
