// Every event of a night and what came of it, to live through it again without the pretend room.
#pragma once

#include <cstdint>
#include <vector>

#include "core/effect.hpp"
#include "core/event.hpp"

namespace tidewright::nights {

struct Journal {
  struct Restart {
    std::size_t at;         // before this event
    std::uint64_t kept_by;  // the state is that after so many events; 0 = a fresh one
  };
  struct Done {
    std::size_t by;  // which event
    Effect effect;
  };
  std::vector<Event> events;
  std::vector<Restart> restarts;
  std::vector<Done> done;

  void add(const Event& event, const Effects& effects) {
    for (const Effect& effect : effects) done.push_back({events.size(), effect});
    events.push_back(event);
  }
};

}  // namespace tidewright::nights
