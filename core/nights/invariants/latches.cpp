#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;
using room::RuleId;

constexpr Duration confirmed_within = 30s;

Complaint judge_wet(const Scene& scene) {
  const auto* reading = std::get_if<Reading>(&scene.event.what);
  if (reading == nullptr || !(reading->value >= 0.5)) return std::nullopt;
  const room::Instrument& instrument = scene.room.instruments[reading->instrument];
  if (instrument.quantity != room::Quantity::wetness || reading->value > instrument.gross_high ||
      scene.room.rules[RuleId::leak].on_delay > Duration{0} ||
      scene.witness.bypassed(room::CauseId::leak_wet)) {
    return std::nullopt;
  }
  if (scene.state.latches[RuleId::leak].set) return std::nullopt;
  return instrument.id + " said wet, and the leak is not latched";
}

Complaint not_clear(const Scene& scene, RuleId alarm) {
  const Witness& witness = scene.witness;
  const bool leak = alarm == RuleId::leak;
  if (!leak && alarm != RuleId::vat_high_high) return std::nullopt;
  const auto quantity = leak ? room::Quantity::wetness : room::Quantity::float_switch;
  return for_each_instrument(scene.room, quantity, [&](room::InstrumentIndex i) -> Complaint {
    const room::Instrument& instrument = scene.room.instruments[i];
    if (!leak && instrument.place != room::Place::vat_high_high) return std::nullopt;
    const Heard& heard = witness.heard[i];
    if (!witness.fresh(i)) return instrument.id + " is not to be relied upon";
    if (heard.value >= 0.5) return instrument.id + " said yes last";
    if (leak && !instrument.on_change && heard.live_in_a_row < 2) {
      return instrument.id + " said dry once only";
    }
    return std::nullopt;
  });
}

// Why this step may not take the latch away; or nothing.
Complaint unjustified(const Scene& scene, RuleId alarm) {
  const auto* ask = std::get_if<Ask>(&scene.event.what);
  if (ask == nullptr || ask->kind != AskKind::confirm || ask->alarm != alarm) {
    return "nobody confirmed a reset";
  }
  const Witness& before = scene.before;
  if (!before.armed || before.armed_by.alarm != alarm) return "no reset was asked for";
  if (before.armed_by.token != ask->token) return "the token was wrong";
  if (scene.witness.now - before.armed_at > confirmed_within) return "the token was too old";
  return not_clear(scene, alarm);
}

Complaint judge_stay(const Scene& scene) {
  for (std::size_t n = 0; n < room::rule_count; ++n) {
    const auto alarm = static_cast<RuleId>(n);
    if (scene.state.latches[alarm].set) continue;
    if (!scene.state_before.latches[alarm].set && !scene.before.told_latched[alarm]) continue;
    if (const Complaint why = unjustified(scene, alarm)) {
      return fmt::format("latch {} is gone although {}", n, *why);
    }
  }
  return std::nullopt;
}

}  // namespace

extern const Invariant wet_latches{.number = 3,
                                   .name = "wet_latches",
                                   .sentence = "a delivered report of water latches the leak",
                                   .after_step = judge_wet};

extern const Invariant latch_stays{
    .number = 3,
    .name = "latch_stays",
    .sentence =
        "a latch goes only by a reset that a person confirmed with its token within 30 s, "
        "with its cause seen gone; one that was announced survives every crash",
    .after_step = judge_stay};

}  // namespace tidewright::nights
