#include "core/water/membrane_series.hpp"

#include "core/water/membrane.hpp"

namespace tidewright::water {
namespace {

constexpr Range feeds{"feed", "ppm", 0.001, 1e6};
constexpr Range flows{"feed flow", "L/h", 0.001, 1e6};
constexpr Range first_recoveries{"recovery of the first membrane", "", 0, 0.99};
constexpr Range second_recoveries{"recovery of the second membrane", "", 0, 0.99};
constexpr Range common_recoveries{"recovery of both", "", 1e-6, 1};
constexpr Range first_rejections{"rejection of the first membrane", "", 0, 1};
constexpr Range second_rejections{"rejection of the second membrane", "", 0, 1};

}  // namespace

Answer<MembraneSeries> membranes_in_series(PartsPerMillion feed, LitresPerHour feed_flow,
                                           const Membrane& first_one, const Membrane& second_one) {
  const double recovery = 1 - (1 - first_one.recovery) * (1 - second_one.recovery);
  if (const auto bad = first(outside(feeds, feed.value), outside(flows, feed_flow.value),
                             outside(first_recoveries, first_one.recovery),
                             outside(second_recoveries, second_one.recovery),
                             outside(common_recoveries, recovery),
                             outside(first_rejections, first_one.rejection),
                             outside(second_rejections, second_one.rejection))) {
    return *bad;
  }
  MembraneSeries series{};
  series.recovery = recovery;
  series.permeate_first = feed * (1 - first_one.rejection);
  series.feed_second = feed * *concentration_factor(first_one.recovery, first_one.rejection);
  series.permeate_second = series.feed_second * (1 - second_one.rejection);
  series.concentrate =
      series.feed_second * *concentration_factor(second_one.recovery, second_one.rejection);
  series.permeate_first_flow = feed_flow * first_one.recovery;
  series.permeate_second_flow = (feed_flow - series.permeate_first_flow) * second_one.recovery;
  const LitresPerHour permeate_flow = series.permeate_first_flow + series.permeate_second_flow;
  series.concentrate_flow = feed_flow - permeate_flow;
  series.permeate = series.permeate_first * (series.permeate_first_flow / permeate_flow) +
                    series.permeate_second * (series.permeate_second_flow / permeate_flow);
  series.rejection = 1 - series.permeate / feed;
  series.concentrate_per_permeate = series.concentrate_flow / permeate_flow;
  return series;
}

}  // namespace tidewright::water
