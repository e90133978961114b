// One consistent view of this instant, derived from signals and ledger, with the wants, latches and
// findings of the step before. Rules, procedures and interlock look at nothing else.
#pragma once

#include <optional>

#include "core/base/units.hpp"
#include "core/picture/judged.hpp"
#include "core/room/room.hpp"
#include "core/state/state.hpp"

namespace tidewright::picture {

// What is known of the leak sensors as a whole.
enum class Watch : std::uint8_t {
  none_installed,
  lost,     // one is bad, or overdue
  awaited,  // one has not been seen live since the start or the link's return, and is not overdue
  good,     // every one is live and good
};

// Water that flows although everything is off and a valve should hold it.
struct LooseWater {
  room::InstrumentIndex meter = 0;
  Litres litres;        // since the run-down was over
  Duration off_for{0};  // everything has been off for so long
  Instant flowed;       // when the meter last showed flow
};

struct Picture {
  const room::Room& room;
  const state::Circumstances& circumstances;
  const state::Signals& signals;
  const state::Comparison& comparison;
  const state::Ledger& ledger;
  const state::MakeWater& make_water;    // of the step before
  const state::LeaseTests& lease_tests;  // of the step before, until its procedure
  const state::Bypasses& bypasses;       // of the step before
  const state::Proofs& proofs;
  const state::Drives& drives;      // of the step before
  const state::Latches& latches;    // of the step before
  const state::Findings& findings;  // of the step before
  Instant now;

  // Danger, believed at any quality.
  std::optional<room::InstrumentIndex> wet = std::nullopt;  // a leak sensor that says wet
  std::optional<room::InstrumentIndex> high_high_wet = std::nullopt;
  std::optional<room::InstrumentIndex> float_full = std::nullopt;  // the float switch says full
  std::optional<LooseWater> loose_water = std::nullopt;

  std::optional<room::InstrumentIndex> concentrate_full = std::nullopt;

  // Safety, believed only when good.
  Watch leak_watch = Watch::none_installed;
  std::optional<room::InstrumentIndex> leak_doubtful =
      std::nullopt;                                     // the sensor behind awaited or lost
  std::optional<Litres> level = std::nullopt;           // good
  std::optional<Litres> level_doubtful = std::nullopt;  // the last value, at any quality
  std::optional<Litres> mixing_level = std::nullopt;    // of the mixing vat, good
  std::optional<Litres> mixing_level_doubtful = std::nullopt;

  // The purifier as it runs.
  std::optional<room::ActuatorIndex> driving = std::nullopt;  // the actuator that drives it
  bool commanded = false;       // the driving actuator's last command is ON
  bool working = false;         // it really runs, as far as can be told
  Celsius water_temperature{};  // good, or a cautious guess
  bool temperature_known = false;
  LitresPerHour flow_expected{};  // product, at this temperature
  LitresPerHour flow_lowest{};    // the lowest credible
  std::optional<Judged> product = std::nullopt;
  std::optional<double> rejection = std::nullopt;  // 0..1, from feed and settled permeate
};

Picture draw(const room::Room&, const State&);

// The feedback of an actuator: on, off, or unknown (none installed, or not good).
std::optional<bool> confirmed(const Picture&, room::ActuatorIndex);
// The power that an actuator draws, when good.
std::optional<Watts> power(const Picture&, room::ActuatorIndex);
// The same as measured since it was switched on and had its time to start: what it drew before
// says nothing of its work. None until then. A meter that speaks on change only is silent where
// nothing changes; its word counts once it had its time, too.
std::optional<Watts> power_at_work(const Picture&, room::ActuatorIndex);
// The power at any quality but garbage: what draws power after OFF is a danger.
std::optional<Watts> power_doubtful(const Picture&, room::ActuatorIndex);
// What the water meter there shows now, when good.
std::optional<LitresPerHour> flow(const Picture&, room::Place);

}  // namespace tidewright::picture
