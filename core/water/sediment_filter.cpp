#include "core/water/sediment_filter.hpp"

#include <algorithm>

namespace tidewright::water {
namespace {

constexpr Range drops{"pressure drop", "bar", 0, 20};
constexpr Range flows{"flow", "L/h", 0.01, 1e5};
constexpr Range flow_ratios{"flow / reference flow", "", 0.1, 10};
constexpr Range powers{"power of the flow", "", 1, 2};
constexpr Range limit_range{"limit of the pressure drop", "bar", 0.01, 20};

}  // namespace

Answer<Bars> drop_at_flow(Bars drop, LitresPerHour flow, LitresPerHour reference, double power) {
  if (const auto bad = first(outside(drops, drop.value), outside(flows, flow.value),
                             outside(flows, reference.value),
                             outside(flow_ratios, flow / reference), outside(powers, power))) {
    return *bad;
  }
  return drop * std::pow(reference / flow, power);
}

Answer<double> clogging(Bars clean, LitresPerHour clean_flow, Bars drop, LitresPerHour flow,
                        const SedimentLimits& limits) {
  const Answer<Bars> now = drop_at_flow(drop, flow, clean_flow);
  if (!now) return *now.outside();
  if (const auto bad = first(
          outside(limit_range, limits.drop.value), outside(limit_range, limits.above_clean.value),
          outside(Range{"clean pressure drop", "bar", 0, 0.9 * limits.drop.value}, clean.value))) {
    return *bad;
  }
  const Bars allowed = std::min(limits.drop - clean, limits.above_clean);
  return std::max(0.0, (*now - clean) / allowed);
}

}  // namespace tidewright::water
