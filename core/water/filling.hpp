// How long a vat takes to fill, and what runs over if nothing stops it. The concentrate's container
// fills faster than the vat: at a recovery of a quarter, three times as fast.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

// Hours until `now` has become `full`; 0 if it is. Range: volumes 0 to 1e6 L, flow 0.001 to 1e6
// L/h. Exact for a steady flow; a float valve throttles the last part, so aim at 95 % of full.
Answer<double> hours_to_fill(Litres now, Litres full, LitresPerHour flow);

// Litres on the floor after that many hours of overflow, and their depth. Range: flow 0 to 1e6 L/h,
// 0 to 1e5 hours, floor 0.01 to 1e5 m2.
struct Flood {
  Litres water;
  Metres depth;
};
Answer<Flood> flood(LitresPerHour flow, double hours, double floor_m2);

// What runs away as concentrate while so much is made. Range: product 0 to 1e6 L/h, recovery 0.01
// to 1. Exact.
Answer<LitresPerHour> concentrate_flow(LitresPerHour product, double recovery);

}  // namespace tidewright::water
