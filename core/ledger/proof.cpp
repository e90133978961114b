#include "core/ledger/proof.hpp"

#include "core/ledger/told.hpp"

namespace tidewright::ledger {
namespace {

// Of the litres expected, what a gauge that can be trusted shows. [choice]
constexpr double gauge_shows_least = 0.5;
constexpr double gauge_shows_most = 1.5;

bool water_moves(const room::Room& room, const state::Ledger& ledger) {
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    if (facts(room.actuators[i].role).moves_water && ledger.working[i].on) return true;
  }
  return false;
}

// The first report begins a trial; those that follow belong to it.
void time_demand(const Sources& from, const Event& event, const state::Ledger& ledger,
                 state::Trial& trial) {
  const Instant now = from.circumstances.now;
  const bool moves = water_moves(from.room, ledger);
  const auto* reading = std::get_if<Reading>(&event.what);
  const bool reached = reading != nullptr && reading->value >= 0.5 &&
                       room::is_tried_by_hand(from.room.instruments[reading->instrument]);
  const bool anew = reached && (reading->instrument != trial.instrument ||
                                from.signals[reading->instrument].changed == now);
  if (anew && (trial.off != never || trial.instrument == no_subject || !trial.running)) {
    trial = {.instrument = reading->instrument, .demanded = now, .running = moves};
  }
  if (trial.instrument != no_subject && trial.off == never && !moves) trial.off = now;
}

Reason told_tested(const Sources& from, const Tell& tell, state::Proofs& proofs) {
  const Instant now = from.circumstances.now;
  const state::Trial& trial = proofs.trial;
  const auto i = tell.instrument;
  if (trial.instrument != i || now - trial.demanded > told_within) {
    return {Why::not_reached_lately, i, {}};
  }
  const bool switches = !from.room.actuators.empty();
  if (switches && !trial.running) return {Why::tested_at_rest, i, {}};
  state::Proof& proof = proofs.instruments[i];
  proof = {.at = now, .passed = trial.off != never};
  if (!proof.passed) return {Why::tested_and_not_off, i, {}};
  proof.figure = static_cast<float>(seconds(trial.off - trial.demanded));
  return {Why::tested, i, {proof.figure}};
}

void answer(const Sources& from, const Tell& tell, state::Proofs& proofs, Effects& effects) {
  Reason why = judge_tell(from.room, tell);
  const bool test = why.why == Why::done && tell.kind == TellKind::tested &&
                    room::is_tried_by_hand(from.room.instruments[tell.instrument]);
  if (test) why = told_tested(from, tell, proofs);
  const bool done = why.why == Why::done || why.why == Why::tested;
  const bool recorded = why.why == Why::tested || why.why == Why::tested_and_not_off;
  if (recorded || (done && changes_the_ledger(tell.kind))) effects.push(Persist{});
  effects.push(Answer{tell.ticket, done, why});
}

void take_fill(const state::LearnedFlow& learned, state::Proof& gauge) {
  if (learned.last_at == long_ago || learned.last_at == gauge.at) return;
  gauge = {.at = learned.last_at,
           .passed = learned.last >= gauge_shows_least && learned.last <= gauge_shows_most,
           .figure = static_cast<float>(learned.last)};
}

}  // namespace

void post_proofs(const Sources& from, const Event& event, const state::Ledger& ledger,
                 state::Proofs& proofs, Effects& effects) {
  if (proofs.installed == long_ago) proofs.installed = from.circumstances.now;
  time_demand(from, event, ledger, proofs.trial);
  if (const auto* tell = std::get_if<Tell>(&event.what)) answer(from, *tell, proofs, effects);
  take_fill(ledger.learned, proofs.gauge);
}

}  // namespace tidewright::ledger
