// Whether the vat's water may be used now, and if not, what it waits for and how long.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/picture/picture.hpp"

namespace tidewright::report {

struct Readiness {
  bool ready = false;
  std::optional<Instant> at;             // when it will be, if that can be said
  std::vector<std::string> waiting_for;  // in words with numbers
  std::string purity;                    // "pure", "not pure", "not known"
  std::string purity_why;
};

// Enough water, not known to be impure, by a signal that is good. The room must have a vat.
Readiness readiness(const picture::Picture&);

// Product that comes now: as the gauge shows it, else as the temperature lets expect; none while
// nothing runs.
std::optional<LitresPerHour> coming_in(const picture::Picture&);

// When `litres` more will be there at that rate.
Instant when_gained(const picture::Picture&, Litres, LitresPerHour);

}  // namespace tidewright::report
