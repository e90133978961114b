// What the water room uses up and somebody must order: salt, resin, cartridges.
#pragma once

#include <cstddef>
#include <string>

namespace tidewright::room {

// step() keeps the stock in an array of this size; config/reader refuses more.
inline constexpr std::size_t supplies_max = 8;

// Amounts are in `unit`, whichever that is.
struct Supply {
  std::string id;
  std::string words;  // "salt"
  std::string unit;   // "kg"
  double order_below = 0;
  double used_in_30_days = 0;
  double used_per_1000_litres = 0;  // of water made
};

}  // namespace tidewright::room
