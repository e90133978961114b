// What accumulates: running time, litres, the fill under way, the samples a median needs.
// Written by ledger/post only. Totals never fall.
#pragma once

#include <array>
#include <cstdint>

#include "core/base/instant.hpp"
#include "core/base/units.hpp"
#include "core/room/room.hpp"
#include "core/state/balance.hpp"

namespace tidewright::state {

// What an actuator really does: its feedback where it has one, else its command.
struct Working {
  bool on = false;
  Instant since = long_ago;  // of the present on or off
  Duration run{0};           // of this run
  Duration day{0};           // of this day
  Instant day_began = long_ago;
  Duration total{0};
  bool turning = false;              // draws power; where no meter says, the same as `on`
  Instant turning_since = long_ago;  // or not turning
  std::array<Instant, 8> starts{};   // newest first: when it began to turn
};

// Dissolved solids at one place, taken in settled running; newest first.
struct Sample {
  Instant at = long_ago;
  float ppm = 0;
  float litres = 0;  // Ledger::flowed at that time
};
struct Samples {
  std::array<Sample, 9> items{};
  std::uint8_t count = 0;
};

// How far the gauge's readings scatter while the level stands, judged from themselves.
struct GaugeNoise {
  Litres spread;           // standard deviation of one reading; 0 until there are three
  Litres last, before;     // the two newest readings
  std::uint8_t fresh = 0;  // how many of those two there are
  std::uint8_t count = 0;  // scatters judged, counted no further than needed
};

// The level's own story, in the vat's litres.
struct LevelTrend {
  bool known = false;
  Litres calm;               // the level with the gauge's noise smoothed away
  Litres peak;               // highest calm level of the present rise, less what was drawn
  Instant moved = long_ago;  // when it last rose above `peak` or fell well below it
  Litres at_off;             // when the driving actuator last went off
  LitresPerHour rate;        // between gauge steps of the last hour or two; 0 until there are two
  Litres from, middle;       // the gauge steps that `rate` is taken from
  Instant from_at = long_ago, middle_at = long_ago;
};

// The metered transfer under way, from the first ON to the end of the demand.
struct Fill {
  bool under_way = false;
  Instant began = long_ago;
  Litres to_go;  // computed before starting
  Litres gained;
  Litres drawn;        // taken out meanwhile
  Duration worked{0};  // running time in all
  Duration flat{0};    // running time since the level last rose
  Litres expected;     // what the running time should have given
};

// So many fills are enough to know the purifier by.
inline constexpr std::uint8_t learned_from = 3;

// What the fills that reached STOP have taught of this purifier.
struct LearnedFlow {
  std::uint8_t fills = 0;  // counted no further than `learned_from`
  double share = 1;        // litres that came, of the litres expected
};

// What the permeate has put on the lead canister since it was rotated or replaced.
struct ResinCharge {
  Litres passed;
  double cation_eq = 0;  // equivalents
  double anion_eq = 0;
};

// The feed's dissolved solids in settled running: what is usual, and what is new.
struct FeedLevel {
  PartsPerMillion usual;     // a slow mean, which one reading moves but little
  PartsPerMillion lately;    // the same of the last hour or so
  Duration learned{0};       // running time behind `usual`
  Instant taken = long_ago;  // the newest reading
};

// What ages between two visits of a person.
struct Upkeep {
  Instant began = long_ago;    // the first posting of all
  Instant cleaned = long_ago;  // told: the vat was cleaned
  Instant aged = long_ago;     // up to when `water_age` is reckoned
  Duration water_age{0};       // mean age of the vat's water, as if it had been fresh at first
};

// A supply as it was counted.
struct Stock {
  Instant counted = long_ago;
  double amount = 0;
  Litres made;  // the ledger's total at that time
};

struct Ledger {
  std::array<Working, room::actuators_max> working;
  Samples product;
  Samples permeate;
  GaugeNoise noise;
  LevelTrend level;
  Fill fill;
  LearnedFlow learned;
  Balance balance;
  Litres flowed;  // what the running time should have given, in all
  Litres made;    // product in all: what the gauge gained, or `flowed` without a gauge
  Instant resin_changed = long_ago;  // told: rotated or replaced
  ResinCharge resin;
  FeedLevel feed;
  Upkeep upkeep;
  std::array<Stock, room::supplies_max> stocks;
  Instant posted = long_ago;
};

}  // namespace tidewright::state
