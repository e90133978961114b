#include "core/water/filling.hpp"

#include <algorithm>

namespace tidewright::water {
namespace {

constexpr Range full_volumes{"full volume", "L", 0, 1e6};
constexpr Range volumes{"volume now", "L", 0, 1e6};
constexpr Range fill_flows{"flow", "L/h", 0.001, 1e6};
constexpr Range flood_flows{"flow", "L/h", 0, 1e6};
constexpr Range hours_range{"time", "h", 0, 1e5};
constexpr Range floors{"floor", "m2", 0.01, 1e5};
constexpr Range products{"product", "L/h", 0, 1e6};
constexpr Range recoveries{"recovery", "", 0.01, 1};

}  // namespace

Answer<double> hours_to_fill(Litres now, Litres full, LitresPerHour flow) {
  if (const auto bad = first(outside(volumes, now.value), outside(full_volumes, full.value),
                             outside(fill_flows, flow.value))) {
    return *bad;
  }
  return std::max(0.0, (full - now).value / flow.value);
}

Answer<Flood> flood(LitresPerHour flow, double hours, double floor_m2) {
  if (const auto bad = first(outside(flood_flows, flow.value), outside(hours_range, hours),
                             outside(floors, floor_m2))) {
    return *bad;
  }
  const Litres water{flow.value * hours};
  return Flood{water, Metres{water.value / 1000 / floor_m2}};
}

Answer<LitresPerHour> concentrate_flow(LitresPerHour product, double recovery) {
  if (const auto bad = first(outside(products, product.value), outside(recoveries, recovery))) {
    return *bad;
  }
  return product * ((1 - recovery) / recovery);
}

}  // namespace tidewright::water
