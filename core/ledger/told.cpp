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

}  // namespace

bool changes_the_ledger(TellKind kind) {
  return kind != TellKind::measured && kind != TellKind::tested;
}

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

}  // namespace tidewright::ledger
