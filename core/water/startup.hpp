// The start of a run. While a membrane stands idle, salt creeps through it, and the first litres
// of permeate carry it to the resin: many short runs wear a resin that one long run would not.
//
// The hold-up between membrane and meter is taken as one mixed vessel that washes out.
// Source: first-order wash-out, textbook; that it clears in 1 to 4 minutes is in residential
// application manuals. Exact for the model; the hold-up is a guess until learned.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

// Range: start and steady 0 to 1e5 mg/L, start not below steady; flow 0.01 to 1e5 L/h, hold-up
// 0.001 to 1000 L.
struct StartUp {
  MilligramsPerLitre start;   // permeate as the pump starts
  MilligramsPerLitre steady;  // as it has settled
  LitresPerHour flow;
  Litres hold_up;
};

// The hold-up learned with a clock and a meter: minutes of running in which the permeate falls half
// way from its start to steady. Range: flow as above, minutes 0.001 to 1e4; refused if the hold-up
// is none of the above. Error: that of the minutes, 20 % for half a minute to 0.1.
Answer<Litres> hold_up_of(LitresPerHour flow, double half_way_minutes);

// Minutes in which what is left above steady falls to 37 %. Judge no quality before five of them
// or five minutes, whichever is longer, of running.
Answer<double> time_constant_minutes(const StartUp& run);

// Permeate after that many minutes of running. Range 0 to 1e6 minutes.
Answer<MilligramsPerLitre> permeate_after(const StartUp& run, double minutes);

// Minutes until the permeate is within `margin` of steady; 0 if it starts there. Range of the
// margin 0.001 to 1e5 mg/L.
Answer<double> minutes_until_within(const StartUp& run, MilligramsPerLitre margin);

struct StartUpCost {
  double excess_mg;      // salt above steady that one start brings
  Litres equal_litres;   // of steady permeate that bring as much; needs steady of 0.001 or more
  double equal_minutes;  // in which they are made
};
Answer<StartUpCost> start_up_cost(const StartUp& run);

struct CycleLoad {
  MilligramsPerLitre mean;  // what the resin sees
  double extra;             // load beyond the steady one, as a fraction of it
};
// Range: starts 0 to 1000 a day, made 0.1 to 1e6 L a day, steady 0.001 to 1e5 mg/L, excess 0 to
// 1e6 mg a start.
Answer<CycleLoad> cycle_load(double starts_per_day, Litres made_per_day, MilligramsPerLitre steady,
                             double excess_mg_per_start);

}  // namespace tidewright::water
