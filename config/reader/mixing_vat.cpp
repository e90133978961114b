#include <fmt/format.h>

#include "config/reader/instruments.hpp"

namespace tidewright::config {
namespace {

void read_mixing_instruments(Draft& draft, const Section& from, const room::MixingVat& vat) {
  if (const Section* gauge = from.table("level")) {
    add_instrument(draft, *gauge,
                   {.quantity = room::Quantity::level,
                    .place = room::Place::mixing_vat,
                    .id = "mixing_vat_level",
                    .where = "the mixing vat",
                    .vat_litres = vat.capacity.value});
  }
  if (const Section* thermometer = from.table("temperature")) {
    add_instrument(draft, *thermometer,
                   {.quantity = room::Quantity::temperature,
                    .place = room::Place::mixing_vat,
                    .id = "mixing_vat_temperature",
                    .where = "the mixing vat"});
  }
}

void check_order(Draft& draft, const Section& from, std::string_view lower,
                 std::string_view higher) {
  const Value* below = from.told(lower);
  const Value* above = from.told(higher);
  const auto below_litres = litres(from, below);
  const auto above_litres = litres(from, above);
  if (!below_litres || !above_litres || *below_litres < *above_litres) return;
  draft.problems.add(below->at,
                     fmt::format("`{}` is \"{}\" in [mixing_vat]; expected it below `{}`, which is "
                                 "\"{}\"",
                                 lower, below->text, higher, above->text),
                     "From the lowest: low, stop_at, volume.");
}

void check_measured(Draft& draft, const Section& from) {
  if (from.mentions("level")) return;
  for (const std::string_view key : {"low", "stop_at"}) {
    if (!from.mentions(key)) continue;
    draft.problems.add(from.at(key),
                       fmt::format("`{}` is given, but [mixing_vat] has no `level` to measure it; "
                                   "expected a level gauge",
                                   key),
                       fmt::format("Add the gauge's `level`, or take `{}` out.", key));
  }
}

}  // namespace

void read_mixing_vat(Draft& draft) {
  if (!draft.mixing_vat) return;
  const Section& from = *draft.mixing_vat;
  const room::MixingVat vat{.capacity = {from.number("volume")},
                            .low = litres(from, from.told("low")),
                            .stop_at = litres(from, from.told("stop_at"))};
  read_mixing_instruments(draft, from, vat);
  check_order(draft, from, "low", "stop_at");
  check_order(draft, from, "low", "volume");
  check_order(draft, from, "stop_at", "volume");
  check_measured(draft, from);
  draft.household.room.mixing_vat = vat;
}

}  // namespace tidewright::config
