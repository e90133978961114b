// Several things in the water at once, and the points of a measured vessel, as they are typed.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "daemon/commands/reckon/quantity.hpp"

namespace tidewright::commands::reckon {

struct Parameter {
  std::string name;
  double now;
  double incoming = 0;
  double gain = 0;
};

// "nitrate=40,0,2 phosphate=0.2": NAME=NOW,NEW,GAIN; what is left out is 0.
std::variant<std::vector<Parameter>, Refusal> read_parameters(const std::string& text);

struct TypedPoint {
  double depth_m;
  double litres;
};
// "0:0 0.1:12.5 0.4:55": DEPTH:LITRES.
std::variant<std::vector<TypedPoint>, Refusal> read_points(const std::string& text);

}  // namespace tidewright::commands::reckon
