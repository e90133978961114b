#include "core/water/membrane.hpp"

#include "core/water/solve.hpp"

namespace tidewright::water {
namespace {

constexpr Range feeds{"feed", "", 0.001, 1e6};
constexpr Range permeates{"permeate", "", 0, 1e6};
constexpr Range permeate_flows{"permeate flow", "L/h", 0, 1e6};
constexpr Range concentrate_flows{"concentrate flow", "L/h", 0, 1e6};
constexpr Range feed_flows{"feed flow", "L/h", 0.001, 2e6};
constexpr Range recoveries{"recovery", "", 0, 0.99};
constexpr Range rejections{"rejection", "", -1, 1};
constexpr Range local_rejections{"local rejection", "", 0, 1};
constexpr Range apparent_rejections{"apparent rejection", "", 0, 1};

// Requires both within their ranges. (1 - (1 - Y)^(1 - r)) / Y, without loss of digits.
double mean_passage(double local_rejection, double recovery) {
  const double passage = 1 - local_rejection;
  if (recovery == 0) return passage;
  return -std::expm1(passage * std::log1p(-recovery)) / recovery;
}

}  // namespace

Answer<double> salt_passage_of(double feed, double permeate) {
  if (const auto bad = first(outside(feeds, feed), outside(permeates, permeate))) return *bad;
  return {permeate / feed, outside(Range{"permeate", "", 0, feed}, permeate)};
}

Answer<double> recovery(LitresPerHour permeate, LitresPerHour concentrate) {
  const LitresPerHour feed = permeate + concentrate;
  if (const auto bad =
          first(outside(permeate_flows, permeate.value),
                outside(concentrate_flows, concentrate.value), outside(feed_flows, feed.value))) {
    return *bad;
  }
  return permeate / feed;
}

Answer<double> concentration_factor(double recovery, double rejection) {
  if (const auto bad = first(outside(recoveries, recovery), outside(rejections, rejection))) {
    return *bad;
  }
  return (1 - recovery * (1 - rejection)) / (1 - recovery);
}

Answer<double> mean_concentration_factor(double recovery) {
  if (const auto bad = outside(recoveries, recovery)) return *bad;
  return recovery == 0 ? 1 : -std::log1p(-recovery) / recovery;
}

Answer<AlongMembrane> along_membrane(double local_rejection, double recovery) {
  if (const auto bad =
          first(outside(local_rejections, local_rejection), outside(recoveries, recovery))) {
    return *bad;
  }
  const double passage = mean_passage(local_rejection, recovery);
  return AlongMembrane{std::pow(1 - recovery, -local_rejection), passage, 1 - passage};
}

Answer<double> local_rejection(double apparent_rejection, double recovery) {
  if (const auto bad =
          first(outside(apparent_rejections, apparent_rejection), outside(recoveries, recovery))) {
    return *bad;
  }
  const auto apparent = [&](double local) { return 1 - mean_passage(local, recovery); };
  // An apparent 0 or 1 is a local 0 or 1, whatever rounding makes of it.
  return solve(apparent, apparent_rejection, {0, 1}, 1e-10)
      .value_or(apparent_rejection < 0.5 ? 0 : 1);
}

}  // namespace tidewright::water
