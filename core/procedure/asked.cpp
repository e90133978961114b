#include "core/procedure/asked.hpp"

#include "core/base/mutant.hpp"
#include "core/procedure/attended.hpp"
#include "core/procedure/full.hpp"

namespace tidewright::procedure {
namespace {

std::optional<Reason> refusal_to_start(const picture::Picture& picture, const Ask& ask) {
  if (!picture.driving) return Reason{Why::nothing_to_drive, no_subject, {}};
  if (const auto latch = held_by_latch(picture)) return latch;
  if (mutant(Mutant::start_refused_after_trip) &&
      picture.make_water.demand == state::Demand::halted) {
    return Reason{Why::nothing_to_drive, no_subject, {}};
  }
  if (const auto reason = full(picture)) return reason;
  if (ask.lasting <= Duration{0} && !room::fills_to_a_mark(picture.room)) {
    return Reason{Why::needs_minutes, no_subject, {}};
  }
  if (ask.lasting > attended_longest) {
    return Reason{Why::value_out_of_range,
                  no_subject,
                  {static_cast<float>(seconds(ask.lasting) / 60), 1,
                   static_cast<float>(seconds(attended_longest) / 60)}};
  }
  return std::nullopt;
}

Reason minutes_asked(Why why, Duration lasting) {
  return {why, no_subject, {static_cast<float>(seconds(lasting) / 60)}};
}

void start(const Ask& ask, Instant now, state::MakeWater& water) {
  const bool attended = ask.lasting > Duration{0};
  water = {.demand = attended ? state::Demand::attended : state::Demand::asked,
           .why = minutes_asked(Why::asked_to_start, ask.lasting),
           .since = now,
           .until = attended ? now + ask.lasting : never};
}

// A stop without minutes stands until a person's start: the standing demand would otherwise begin
// anew at once.
void stop(const Ask& ask, Instant now, state::MakeWater& water) {
  water = {.demand = state::Demand::halted,
           .why = minutes_asked(Why::asked_to_stop, ask.lasting),
           .since = now,
           .until = ask.lasting > Duration{0} ? now + ask.lasting : never};
}

}  // namespace

std::optional<Reason> held_by_latch(const picture::Picture& picture) {
  if (!picture.driving) return std::nullopt;
  return held_by_latch(picture.latches, picture.room.actuators[*picture.driving].role);
}

void take_ask(const picture::Picture& picture, const Event& event, state::MakeWater& water,
              Effects& effects) {
  const auto* ask = std::get_if<Ask>(&event.what);
  if (mutant(Mutant::acknowledging_stops_water) && ask != nullptr &&
      ask->kind == AskKind::acknowledge) {
    return stop(*ask, picture.now, water);
  }
  if (ask == nullptr || ask->actuator != no_subject) return;
  if (ask->kind == AskKind::start) {
    if (const auto refused = refusal_to_start(picture, *ask)) {
      effects.push(Answer{ask->ticket, false, *refused});
      return;
    }
    start(*ask, picture.now, water);
  } else if (ask->kind == AskKind::stop) {
    stop(*ask, picture.now, water);
  } else {
    return;
  }
  effects.push(Answer{ask->ticket, true, water.why});
}

}  // namespace tidewright::procedure
