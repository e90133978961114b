// One vat and its marks. LL < L < START < STOP < H < HH < brim, where given.
#pragma once

#include <optional>
#include <string>

#include "core/base/instant.hpp"
#include "core/base/units.hpp"

namespace tidewright::room {

struct Vat {
  std::string id;
  std::string holds;          // "pure water"
  Litres capacity;            // to the brim
  std::optional<Litres> low;  // below: vat_low; also raised under three days of top-off
  std::optional<Litres> start_below;
  std::optional<Litres> stop_at;
  Litres enough;              // from here on it is ready
  Litres top_off_per_day{0};  // what the tank takes; 0 = not told
  std::optional<Duration> clean_every = std::nullopt;
  std::optional<Duration> water_age_longest = std::nullopt;  // a mean age
};

// From here on a mechanical float valve may throttle or close: it is set by hand, a little under
// STOP or over it. [choice]
inline constexpr double float_closes_from = 0.95;  // of STOP

}  // namespace tidewright::room
