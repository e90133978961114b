#include "core/ledger/upkeep.hpp"

#include <algorithm>
#include <cmath>

#include "core/ledger/told.hpp"

namespace tidewright::ledger {
namespace {

void age_water(Instant now, Litres fresh, Litres level, state::Upkeep& upkeep) {
  if (upkeep.began == long_ago) upkeep.began = upkeep.aged = now;
  upkeep.water_age += now - upkeep.aged;
  upkeep.aged = now;
  if (fresh.value <= 0 || level.value <= 0) return;
  const double old = 1 - std::min(1.0, fresh / level);
  const double age = static_cast<double>(upkeep.water_age.count()) * old;
  upkeep.water_age = Duration{std::llround(age)};
}

void take_up(const Tell& tell, Instant now, state::Ledger& ledger) {
  switch (tell.kind) {
    case TellKind::rotated:
    case TellKind::replaced:
      ledger.product = ledger.permeate = {};
      ledger.resin = {};
      ledger.resin_changed = now;
      return;
    case TellKind::cleaned:
      ledger.upkeep.cleaned = now;
      return;
    case TellKind::stocked:
      ledger.stocks[tell.supply] = {now, tell.value, ledger.made};
      return;
    case TellKind::measured:
    case TellKind::tested:
      return;
  }
}

}  // namespace

void post_upkeep(const Sources& from, const Event& event, Litres fresh, state::Ledger& ledger) {
  age_water(from.circumstances.now, fresh, ledger.level.peak, ledger.upkeep);
  const auto* tell = std::get_if<Tell>(&event.what);
  if (tell == nullptr || judge_tell(from.room, *tell).why != Why::done) return;
  take_up(*tell, from.circumstances.now, ledger);
}

}  // namespace tidewright::ledger
