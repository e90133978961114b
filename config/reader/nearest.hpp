// The nearest spelling: what a person probably meant to write.
#pragma once

#include <span>
#include <string_view>

namespace tidewright::config {

// The candidate with the fewest letters changed, added, left out or swapped; the first one of
// equals. Empty if none is within a third of the letters (at least one, at most three).
std::string_view nearest(std::string_view written, std::span<const std::string_view> candidates);

}  // namespace tidewright::config
