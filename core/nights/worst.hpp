// The worst time from water on the floor to the relay open, under every single fault: computed from
// the household's own keys, and the worst that is seen when it is lived through.
#pragma once

#include <optional>
#include <vector>

#include "core/nights/fault.hpp"

namespace tidewright::nights {

struct Worst {
  const FaultKind* kind;             // null: without any fault
  std::optional<Duration> computed;  // none: nothing here can end it
  Duration seen{0};
  std::size_t nights = 0;
};

// None where nothing here can end it: a relay that is welded, a sensor that alone says "dry".
std::optional<Duration> worst_computed(const room::Room&, const FaultKind*);

// Lives through `nights` of each single fault, with water on the floor while it lasts and a fill
// under way. Empty for a room in which nothing is switched.
std::vector<Worst> worst_seen(const std::string& household, const room::Room&, std::uint64_t seed,
                              std::size_t nights);

}  // namespace tidewright::nights
