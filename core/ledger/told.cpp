#include "core/ledger/told.hpp"

namespace tidewright::ledger {
namespace {

Reason judged(const room::Room& room, const Tell& tell) {
  const bool about_instrument = tell.kind == TellKind::measured || tell.kind == TellKind::tested;
  if (!about_instrument) return {Why::done, no_subject, {}};
  if (tell.instrument >= room.instruments.size()) return {Why::no_such_thing, no_subject, {}};
  const room::Instrument& instrument = room.instruments[tell.instrument];
  const bool possible = tell.value >= instrument.gross_low && tell.value <= instrument.gross_high;
  if (tell.kind == TellKind::measured && !possible) {
    return {Why::value_out_of_range,
            tell.instrument,
            {static_cast<float>(tell.value), static_cast<float>(instrument.gross_low),
             static_cast<float>(instrument.gross_high)}};
  }
  return {Why::done, tell.instrument, {}};
}

}  // namespace

void answer_tell(const room::Room& room, const Event& event, Effects& effects) {
  const auto* tell = std::get_if<Tell>(&event.what);
  if (tell == nullptr) return;
  const Reason why = judged(room, *tell);
  const bool resin = tell->kind == TellKind::rotated || tell->kind == TellKind::replaced;
  if (resin) effects.push(Persist{});
  effects.push(Answer{tell->ticket, why.why == Why::done, why});
}

}  // namespace tidewright::ledger
