#include <fmt/format.h>

#include "config/reader/instruments.hpp"

namespace tidewright::config {
namespace {

void read_vat_instruments(Draft& draft, const Section& from, const room::Vat& vat) {
  using room::Place;
  using room::Quantity;
  const std::string words = fmt::format("the vat of {}", vat.holds);
  if (const Section* gauge = from.table("level")) {
    add_instrument(draft, *gauge,
                   {.quantity = Quantity::level,
                    .place = Place::vat,
                    .id = vat.id + "_level",
                    .where = words,
                    .vat_litres = vat.capacity.value});
  }
  if (const Section* full = from.table("full")) {
    add_instrument(draft, *full,
                   {.quantity = Quantity::float_switch,
                    .place = Place::vat,
                    .id = vat.id + "_full",
                    .where = words});
  }
  if (const Section* high_high = from.table("high_high")) {
    add_instrument(draft, *high_high,
                   {.quantity = Quantity::float_switch,
                    .place = Place::vat_high_high,
                    .id = vat.id + "_high_high",
                    .where = "above the marks of " + words});
  }
}

// A mark that nothing measures would never act.
void check_marks_are_measured(Draft& draft, const Section& from) {
  if (from.mentions("level")) return;
  for (const std::string_view key :
       {"low", "start_below", "stop_at", "enough", "water_age_longest"}) {
    if (!from.mentions(key)) continue;
    draft.problems.add(from.at(key),
                       fmt::format("`{}` is given, but {} has no `level` to measure it; expected a "
                                   "level gauge",
                                   key, from.title()),
                       fmt::format("Add the gauge's `level`, or take `{}` out.", key));
  }
}

}  // namespace

std::optional<Litres> litres(const Section& vat, const Value* level) {
  const Value* volume = vat.value("volume");
  if (level == nullptr || volume == nullptr) return std::nullopt;
  const bool share = level->measure.unit->dimension == Dimension::share;
  return Litres{level->number * (share ? volume->number : 1)};
}

void read_vat(Draft& draft) {
  for (std::size_t i = 1; i < draft.vats.size(); ++i) {
    draft.problems.add(draft.vats[i].at(),
                       fmt::format("{} is the second vat, after {}; expected one vat",
                                   draft.vats[i].title(), draft.vats[0].title()),
                       "This version looks after one vat in a room.");
  }
  if (draft.vats.empty()) return;
  const Section& from = draft.vats.front();
  room::Vat vat;
  vat.id = from.id();
  vat.holds = from.text("holds");
  vat.capacity = {from.number("volume")};
  vat.low = litres(from, from.told("low"));
  vat.start_below = litres(from, from.told("start_below"));
  vat.stop_at = litres(from, from.told("stop_at"));
  vat.enough =
      litres(from, from.told("enough")).value_or(vat.start_below.value_or(vat.capacity * 0.5));
  vat.top_off_per_day = {from.number("top_off_per_day")};
  if (from.told("clean_every") != nullptr) vat.clean_every = duration(from, "clean_every");
  if (from.told("water_age_longest") != nullptr) {
    vat.water_age_longest = duration(from, "water_age_longest");
  }
  read_vat_instruments(draft, from, vat);
  check_marks_are_measured(draft, from);
  draft.household.room.vat = std::move(vat);
}

}  // namespace tidewright::config
