// The part of core/state/fields.hpp that names the fields of the water balance.
#pragma once

#include "core/state/balance.hpp"
#include "core/state/either.hpp"

namespace tidewright::state {

void fields(auto& visit, Either<Stretch> auto& stretch) {
  visit("standing", stretch.standing);
  visit("began", stretch.began);
  visit("held_at", stretch.held_at);
  visit("held", stretch.held);
  visit("levels", stretch.levels);
  visit("count", stretch.count);
  visit("lived", stretch.lived);
  visit("litre_hours", stretch.litre_hours);
}

void fields(auto& visit, Either<Habit> auto& habit) {
  visit("usual", habit.usual);
  visit("restless", habit.restless);
  visit("learned", habit.learned);
  visit("slices", habit.slices);
  visit("waits", habit.waits);
  visit("fell", habit.fell);
  visit("fell_error", habit.fell_error);
}

void fields(auto& visit, Either<Leak> auto& leak) {
  visit("found", leak.found);
  visit("began", leak.began);
  visit("rate", leak.rate);
  visit("error", leak.error);
  visit("litres", leak.litres);
  visit("slices", leak.slices);
}

void fields(auto& visit, Either<Shortfall> auto& shortfall) {
  visit("found", shortfall.found);
  visit("rate", shortfall.rate);
  visit("usual", shortfall.usual);
  visit("missing", shortfall.missing);
  visit("lasting", shortfall.lasting);
  visit("deviations", shortfall.deviations);
}

void fields(auto& visit, Either<Draws> auto& draws) {
  visit("litres", draws.litres);
  visit("began", draws.began);
  visit("last", draws.last);
  visit("ours", draws.ours);
  visit("an_hour", draws.an_hour);
  visit("largest", draws.largest);
  visit("known", draws.known);
}

void fields(auto& visit, Either<Balance> auto& balance) {
  visit("stretch", balance.stretch);
  visit("habit", balance.habit);
  visit("leak", balance.leak);
  visit("stall", balance.stall);
  visit("slow", balance.slow);
  visit("draws", balance.draws);
}

}  // namespace tidewright::state
