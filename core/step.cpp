#include "core/step.hpp"

#include "core/alarm/digest.hpp"
#include "core/alarm/live.hpp"
#include "core/alarm/notices.hpp"
#include "core/interlock/decide.hpp"
#include "core/ledger/post.hpp"
#include "core/ledger/proof.hpp"
#include "core/ledger/proof_by_meter.hpp"
#include "core/ledger/told.hpp"
#include "core/picture/picture.hpp"
#include "core/procedure/attended.hpp"
#include "core/procedure/lease_test.hpp"
#include "core/procedure/make_water.hpp"
#include "core/rules/catalogue.hpp"
#include "core/signal/compare.hpp"
#include "core/signal/judge.hpp"
#include "core/signal/note.hpp"

namespace tidewright {
namespace {

// More was wanted than can be carried out in one pass: nothing of it is trusted.
void all_off(const room::Room& room, State& state, Effects& effects) {
  effects.clear();
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    state.drives[i].on = false;
    state.drives[i].commanded = state.circumstances.now;
    state.drives[i].why = {Why::effects_overflowed, no_subject, {}};
    effects.push(Command{static_cast<room::ActuatorIndex>(i), false, std::chrono::seconds{10}});
  }
}

}  // namespace

Instant step(const room::Room& room, State& state, const Event& event, Effects& effects) {
  effects.clear();
  Wake wake;
  signal::note(event, state.circumstances);
  signal::judge(room, event, state.circumstances, state.signals, wake);
  signal::compare({room, state.circumstances, state.drives}, event, state.signals, state.comparison,
                  wake);
  const ledger::Sources sources{room, state.circumstances, state.signals, state.drives,
                                state.make_water};
  ledger::post(sources, event, state.ledger);
  ledger::post_proofs_by_meter(sources, event, state.comparison, state.ledger.fill, state.proofs);
  const auto proved = ledger::post_proofs(sources, event, state.ledger, state.proofs);
  ledger::answer_tell(room, event, proved, effects);
  const picture::Picture picture = picture::draw(room, state);
  rules::judge(picture, state.findings, wake);
  procedure::make_water(picture, event, state.make_water, effects, wake);
  procedure::attended(picture, event, state.attended, effects, wake);
  procedure::lease_test(picture, event, state.lease_tests, effects, wake);
  interlock::decide(picture, state.findings, state.make_water, state.attended,
                    state.lease_tests.under_way, event, state.bypasses, state.latches, state.armed,
                    state.drives, effects, wake);
  alarm::live(room, event, state.findings, state.latches, state.circumstances, state.alarms,
              state.flood, effects, wake);
  alarm::digest(state.latches, state.circumstances, state.ledger.made, state.alarms, state.digest,
                effects, wake);
  alarm::enter(effects, state.circumstances.now, state.notices);
  if (effects.overflowed()) all_off(room, state, effects);
  return wake.at;
}

}  // namespace tidewright
