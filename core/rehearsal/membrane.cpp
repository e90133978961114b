#include "core/rehearsal/membrane.hpp"

#include <algorithm>
#include <cmath>

namespace tidewright::rehearsal {
namespace {

// Common practice, from memory: about 0.7 bar for each 1000 ppm.
double osmotic_bar(PartsPerMillion feed) { return 0.0007 * feed.value; }

}  // namespace

double viscosity(Celsius t) { return 0.02414 * std::pow(10.0, 247.8 / (t.value + 273.15 - 140.0)); }

LitresPerHour Membrane::flow(bool boosted, PartsPerMillion feed, Celsius temperature) const {
  const double applied = boosted ? settings_.boosted_bar : settings_.line_bar;
  const double driving = std::max(0.0, applied - osmotic_bar(feed));
  const double thinness = viscosity(Celsius{25}) / viscosity(temperature);
  return settings_.rated * (settings_.condition * thinness * driving / settings_.boosted_bar);
}

void Membrane::live(Duration lasting, LitresPerHour flow, PartsPerMillion feed) {
  if (flow.value > 0) {
    creep_ = creep_ * std::exp(-seconds(lasting) / seconds(settings_.creep_fades));
    return;
  }
  // Standing water tends to half the feed's salt (no source; only the shape matters).
  const PartsPerMillion end = feed * 0.5;
  creep_ = end + (creep_ - end) * std::exp(-seconds(lasting) / seconds(settings_.creep_builds));
}

PartsPerMillion Membrane::permeate(LitresPerHour flow, PartsPerMillion feed) const {
  const double passage = 1 - settings_.rejection;
  const double slowness = flow.value > 0 ? std::clamp(settings_.rated / flow, 0.5, 10.0) : 1;
  return std::min(feed, feed * (passage * slowness) + creep_);
}

}  // namespace tidewright::rehearsal
