// The vat's outline, as lines, and how high so many litres stand in it.
#pragma once

#include <string>

#include "config/household.hpp"

namespace tidewright::panel {

// On a drawing of this size: the brim at `top`, the floor at `bottom`.
struct Frame {
  double left = 10;
  double right = 150;
  double top = 12;
  double bottom = 222;
};

// The `d` of an SVG path, closed.
std::string outline_path(config::Outline, const Frame&);
// Where the surface is when a share of 0 to 1 of the brim's litres is in it.
double surface(config::Outline, const Frame&, double share);

}  // namespace tidewright::panel
