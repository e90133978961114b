#include "core/water/normalisation.hpp"

#include "core/water/membrane.hpp"

namespace tidewright::water {
namespace {

constexpr Range flows{"flow", "L/h", 0, 1e6};
constexpr Range feeds{"feed", "mg/L", 0.001, 60000};

}  // namespace

Answer<LitresPerHour> flow_at(LitresPerHour flow, const MembraneConditions& from,
                              const MembraneConditions& to, const MembraneTemperatureLaw& law) {
  const Answer<Bars> driving_from = net_driving_pressure(from);
  const Answer<Bars> driving_to = net_driving_pressure(to);
  const Answer<double> warmth_from = temperature_factor(from.temperature, law);
  const Answer<double> warmth_to = temperature_factor(to.temperature, law);
  if (const auto bad = outside(flows, flow.value)) return *bad;
  if (!driving_from) return *driving_from.outside();
  if (!driving_to) return *driving_to.outside();
  if (!warmth_from) return *warmth_from.outside();
  if (!warmth_to) return *warmth_to.outside();
  return {flow * (*driving_to / *driving_from) * (*warmth_to / *warmth_from),
          first(warmth_from.outside(), warmth_to.outside())};
}

Answer<MilligramsPerLitre> permeate_at(MilligramsPerLitre permeate, const MembraneConditions& from,
                                       MilligramsPerLitre permeate_before,
                                       const MembraneConditions& to) {
  const Answer<Bars> driving_from = net_driving_pressure(from);
  const Answer<Bars> driving_to = net_driving_pressure(to);
  const Answer<Bars> osmotic_from = osmotic_pressure(permeate, from.temperature);
  const Answer<Bars> osmotic_to = osmotic_pressure(permeate_before, to.temperature);
  if (!driving_from) return *driving_from.outside();
  if (!driving_to) return *driving_to.outside();
  if (!osmotic_from) return *osmotic_from.outside();
  if (!osmotic_to) return *osmotic_to.outside();
  if (const auto bad = first(outside(feeds, from.feed.value), outside(feeds, to.feed.value))) {
    return *bad;
  }
  const double pressure = (*driving_from + *osmotic_from) / (*driving_to + *osmotic_to);
  const MilligramsPerLitre mean_from = from.feed * *mean_concentration_factor(from.recovery);
  const MilligramsPerLitre mean_to = to.feed * *mean_concentration_factor(to.recovery);
  return permeate * pressure * (mean_to / mean_from);
}

}  // namespace tidewright::water
