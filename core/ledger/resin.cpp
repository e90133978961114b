#include "core/ledger/resin.hpp"

#include <optional>

#include "core/signal/ruling.hpp"
#include "core/water/dissolved_solids.hpp"
#include "core/water/resin.hpp"

namespace tidewright::ledger {
namespace {

// A meter's ppm are taken as those of sodium chloride, as most hand meters show them.
std::optional<water::ResinLoad> load_now(const Sources& from) {
  const auto meter = signal::ruling(from.room, from.signals, room::Quantity::dissolved_solids,
                                    room::Place::permeate);
  if (!meter || from.signals[*meter].quality != Quality::good) return std::nullopt;
  const auto conductivity = water::conductivity_of_solids({from.signals[*meter].value},
                                                          water::SolidsScale::sodium_chloride);
  if (!conductivity) return std::nullopt;
  const MilligramsPerLitre carbon_dioxide{from.room.purifier->carbon_dioxide.value};
  const auto load = water::resin_load(*conductivity, carbon_dioxide, MilligramsPerLitre{0});
  return load ? std::optional{*load} : std::nullopt;
}

}  // namespace

void post_resin(const Sources& from, Litres made, state::Ledger& ledger) {
  if (!from.room.purifier || made.value <= 0 || ledger.resin_changed == long_ago) return;
  state::ResinCharge& resin = ledger.resin;
  if (const auto load = load_now(from)) {
    resin.cation_eq += made.value * load->cation.value / 1000;
    resin.anion_eq += made.value * load->anion.value / 1000;
  } else if (resin.passed.value > 0) {
    const double grown = 1 + made / resin.passed;
    resin.cation_eq *= grown;
    resin.anion_eq *= grown;
  } else {
    return;
  }
  resin.passed += made;
}

}  // namespace tidewright::ledger
