// Tells whoever watches what changes in the pretend room: plugs, water in the vat, on the floor.
#pragma once

#include <string_view>
#include <vector>

#include "core/rehearsal/pretend_room.hpp"
#include "core/room/room.hpp"

namespace tidewright::pretend {

// One line with the room's time before it: "00:12:30  words".
void print_line(Duration since_begin, std::string_view words);

class Narrator {
 public:
  Narrator(const room::Room& room, const rehearsal::PretendRoom&);

  // Says what has changed since the last look.
  void look(rehearsal::PretendRoom&);

 private:
  const room::Room* room_;
  Instant begins_;
  std::vector<bool> on_;
  bool wet_ = false;
  int tenths_;  // of the vat that are full
};

}  // namespace tidewright::pretend
