#include "core/ledger/proof.hpp"

#include <algorithm>

#include "core/ledger/told.hpp"

namespace tidewright::ledger {
namespace {

bool moves_water(const room::Room& room, std::size_t i) {
  return facts(room.actuators[i].role).moves_water;
}

bool water_moves(const room::Room& room, const state::Ledger& ledger) {
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    if (moves_water(room, i) && ledger.working[i].on) return true;
  }
  return false;
}

// After that time an OFF was somebody else's.
Duration off_within(const room::Room& room) {
  Duration longest{0};
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    if (!moves_water(room, i)) continue;
    longest = std::max(longest, room::feedback_due(room, static_cast<room::ActuatorIndex>(i)));
  }
  return longest;
}

// A cloth is wet more than once: the first report while water moves is the demand.
void time_demand(const Sources& from, const Event& event, const state::Ledger& ledger,
                 state::Trial& trial) {
  const Instant now = from.circumstances.now;
  const bool moves = water_moves(from.room, ledger);
  const auto* reading = std::get_if<Reading>(&event.what);
  const bool reached = reading != nullptr && reading->value >= 0.5 &&
                       room::is_tried_by_hand(from.room.instruments[reading->instrument]) &&
                       from.signals[reading->instrument].changed == now;
  const bool under_way = trial.instrument != no_subject && trial.off == never;
  // Where nothing is switched, to be heard of is all.
  if (reached && !under_way && (moves || from.room.actuators.empty())) {
    trial = {.instrument = reading->instrument, .demanded = now};
  }
  if (trial.instrument != no_subject && trial.off == never && !moves) trial.off = now;
}

Reason told_tested(const Sources& from, room::InstrumentIndex i, state::Proofs& proofs) {
  const Instant now = from.circumstances.now;
  const state::Trial& trial = proofs.trial;
  if (trial.instrument != i || now - trial.demanded > told_within) {
    return {Why::not_reached_lately, i, {}};
  }
  const bool passed = trial.off != never && trial.off - trial.demanded <= off_within(from.room);
  state::Proof& proof = proofs.instruments[i];
  proof = {.at = now, .passed = passed};
  if (!passed) return {Why::tested_and_not_off, i, {}};
  proof.figure = static_cast<float>(seconds(trial.off - trial.demanded));
  return {Why::tested, i, {proof.figure}};
}

}  // namespace

std::optional<Reason> post_proofs(const Sources& from, const Event& event,
                                  const state::Ledger& ledger, state::Proofs& proofs) {
  if (std::holds_alternative<Started>(event.what)) proofs.trial = {};
  if (proofs.installed == long_ago) proofs.installed = from.circumstances.now;
  time_demand(from, event, ledger, proofs.trial);
  const auto* tell = std::get_if<Tell>(&event.what);
  if (tell == nullptr || tell->kind != TellKind::tested ||
      judge_tell(from.room, *tell).why != Why::done ||
      !room::is_tried_by_hand(from.room.instruments[tell->instrument])) {
    return std::nullopt;
  }
  return told_tested(from, tell->instrument, proofs);
}

}  // namespace tidewright::ledger
