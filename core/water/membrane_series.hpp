// Two membranes in series on the concentrate: what the first holds back feeds the second, and the
// two permeates are collected together.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

// Fractions, each of the membrane's own feed.
struct Membrane {
  double recovery;
  double rejection;
};

struct MembraneSeries {
  PartsPerMillion permeate_first;
  PartsPerMillion feed_second;  // the concentrate of the first
  PartsPerMillion permeate_second;
  PartsPerMillion concentrate;
  PartsPerMillion permeate;  // both together
  LitresPerHour permeate_first_flow;
  LitresPerHour permeate_second_flow;
  LitresPerHour concentrate_flow;
  double recovery;
  double rejection;  // of feed and common permeate: lower than that of two equal membranes
  double concentrate_per_permeate;
};

// Range: feed 0.001 to 1e6 ppm, flow 0.001 to 1e6 L/h, each recovery 0 to 0.99 and not both 0,
// each rejection 0 to 1. Exact. With equal recoveries the common permeate cannot say which of the
// two is worn: it is the same for either, and only a reading of each tells.
// Source: mass balance; FilmTec Reverse Osmosis Membranes Technical Manual, DuPont, form
// 45-D01504-en rev. 20, equations 51 and 56, seen in a secondary copy.
Answer<MembraneSeries> membranes_in_series(PartsPerMillion feed, LitresPerHour feed_flow,
                                           const Membrane& first, const Membrane& second);

}  // namespace tidewright::water
