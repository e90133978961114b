// Who hears what a night's daemon has to tell people, as its report thread would. Given to a Run by
// tests of what becomes of announcements.
#pragma once

#include "core/effect.hpp"
#include "core/state/state.hpp"

namespace tidewright::nights {

class Listener {
 public:
  virtual ~Listener() = default;
  // A run of the daemon begins, with what the disk held.
  virtual void begins(const State& found) = 0;
  // A step announces; nobody may know of it yet.
  virtual void announces(const Announcement& announcement) = 0;
  // The disk has answered: people may be told all of the state. `kept`: it has taken it.
  virtual void tells(const State& state, bool kept) = 0;
  virtual void dies() = 0;
};

}  // namespace tidewright::nights
