#include "core/ledger/told.hpp"

namespace tidewright::ledger {
namespace {

constexpr double stock_most = 1e6;

Reason out_of_range(const Tell& tell, double low, double high) {
  return {Why::value_out_of_range,
          tell.instrument,
          {static_cast<float>(tell.value), static_cast<float>(low), static_cast<float>(high)}};
}

Reason judge_instrument(const room::Room& room, const Tell& tell) {
  if (tell.instrument >= room.instruments.size()) return {Why::no_such_thing, no_subject, {}};
  const room::Instrument& instrument = room.instruments[tell.instrument];
  const bool possible = tell.value >= instrument.gross_low && tell.value <= instrument.gross_high;
  if (tell.kind == TellKind::measured && !possible) {
    return out_of_range(tell, instrument.gross_low, instrument.gross_high);
  }
  return {Why::done, tell.instrument, {}};
}

bool changes_the_ledger(TellKind kind) {
  return kind != TellKind::measured && kind != TellKind::tested;
}

}  // namespace

Reason judge_tell(const room::Room& room, const Tell& tell) {
  switch (tell.kind) {
    case TellKind::measured:
    case TellKind::tested:
      return judge_instrument(room, tell);
    case TellKind::stocked:
      if (tell.supply >= room.supplies.size()) return {Why::no_such_thing, no_subject, {}};
      if (!(tell.value >= 0 && tell.value <= stock_most)) return out_of_range(tell, 0, stock_most);
      break;
    case TellKind::rotated:
    case TellKind::replaced:
    case TellKind::cleaned:
      break;
  }
  return {Why::done, no_subject, {}};
}

void answer_tell(const room::Room& room, const Event& event, const std::optional<Reason>& proved,
                 Effects& effects) {
  const auto* tell = std::get_if<Tell>(&event.what);
  if (tell == nullptr) return;
  const Reason why = proved.value_or(judge_tell(room, *tell));
  const bool done = why.why == Why::done || why.why == Why::tested;
  if (proved || (done && changes_the_ledger(tell->kind))) effects.push(Persist{});
  effects.push(Answer{tell->ticket, done, why});
}

}  // namespace tidewright::ledger
