#include "core/report/fields.hpp"
#include "core/report/phrases.hpp"
#include "core/report/readiness.hpp"
#include "core/report/things.hpp"
#include "core/signal/ruling.hpp"

namespace tidewright::report {
namespace {

using picture::Picture;
using state::Demand;

// The gauge's rate counts while it moves; after two quiet hours the level stands.
constexpr Duration rate_counts_for = std::chrono::hours{2};

struct Condition {
  std::string word;  // filling, paused, held, full, resting
  Reason why;
};

Condition condition(const Picture& picture) {
  const state::MakeWater& water = picture.make_water;
  if (state::asks_for_water(water.demand)) {
    if (picture.working) return {"filling", water.why};
    return {"paused", picture.driving ? picture.drives[*picture.driving].why : water.why};
  }
  if (water.demand == Demand::halted) return {"held", water.why};
  const auto& stop_at = picture.room.vat->stop_at;
  const bool at_stop = picture.level && stop_at && *picture.level >= *stop_at;
  if (at_stop || picture.float_full) return {"full", water.why};
  return {"resting", water.why};
}

std::optional<room::InstrumentIndex> gauge_of(const Picture& picture) {
  return signal::ruling(picture.room, picture.signals, room::Quantity::level, room::Place::vat);
}

std::string level_why(const Picture& picture) {
  const auto gauge = gauge_of(picture);
  if (!gauge) return "there is no gauge";
  return words(picture.room, signal_reason(picture, *gauge));
}

std::optional<double> rate(const Picture& picture) {
  const state::LevelTrend& trend = picture.ledger.level;
  if (!trend.known || !picture.level) return std::nullopt;
  if (picture.now - trend.moved > rate_counts_for) return 0;
  if (trend.rate.value == 0) return std::nullopt;
  return trend.rate.value;
}

void add_full_at(const Picture& picture, Fields& fields) {
  const auto& stop_at = picture.room.vat->stop_at;
  const auto flow = coming_in(picture);
  if (!flow) {
    fields.unknown("full_at", "no water is being made");
  } else if (!picture.level || !stop_at) {
    fields.unknown("full_at", "the level or its stop mark is not known");
  } else {
    const Litres missing{std::max(0.0, (*stop_at - *picture.level).value)};
    fields.add("full_at",
               wall_time(when_gained(picture, missing, *flow), picture.circumstances.wall));
  }
}

// Of the level, and so of all that is reckoned from it.
void add_quality(const Picture& picture, Fields& fields) {
  const auto gauge = gauge_of(picture);
  if (!gauge) {
    fields.add("quality", quality_word(Quality::bad)).unknown("status", level_why(picture));
    return;
  }
  const state::Signal& signal = picture.signals[*gauge];
  fields.add("quality", quality_word(signal.quality))
      .add("status", status_word(signal.status))
      .add("quality_why", level_why(picture));
}

void add_ready(const Picture& picture, const Readiness& readiness, Fields& fields) {
  fields.add("ready", readiness.ready);
  if (readiness.at) {
    fields.add("ready_at", wall_time(*readiness.at, picture.circumstances.wall));
  } else if (readiness.ready) {
    fields.unknown("ready_at", "it is ready now");
  } else {
    fields.unknown("ready_at",
                   "it cannot be said while this is missing: " +
                       (readiness.waiting_for.empty() ? "-" : readiness.waiting_for[0]));
  }
  fields.add("waiting_for", readiness.waiting_for)
      .add("purity", readiness.purity)
      .add("purity_why", readiness.purity_why);
}

void add_upkeep(const Picture& picture, Fields& fields) {
  const state::Upkeep& upkeep = picture.ledger.upkeep;
  const bool gauge = room::find(picture.room, room::Quantity::level, room::Place::vat).has_value();
  fields.add_if("water_age_days",
                gauge ? std::optional{hours(upkeep.water_age) / 24} : std::nullopt,
                "it needs a gauge, to see what comes in and goes out");
  const auto& every = picture.room.vat->clean_every;
  fields.add_if("cleaning_due_at",
                every ? std::optional{date(std::max(upkeep.cleaned, upkeep.began) + *every,
                                           picture.circumstances.wall)}
                      : std::nullopt,
                "the file does not say how often it is cleaned");
}

}  // namespace

Thing vat(const Picture& picture) {
  const room::Vat& vat = *picture.room.vat;
  const Condition now = condition(picture);
  const auto& level = picture.level;
  Fields fields{"vat", vat.id};
  fields.add("state", now.word).add("why", words(picture.room, now.why));
  fields.add_if("volume_l", level ? std::optional{level->value} : std::nullopt, level_why(picture));
  fields.add_if("fill_percent", level ? std::optional{100 * (*level / vat.capacity)} : std::nullopt,
                level_why(picture), 0);
  fields.add_if("rate_l_h", rate(picture),
                level ? "the gauge has not moved often enough yet" : level_why(picture));
  add_full_at(picture, fields);
  add_ready(picture, readiness(picture), fields);
  const bool days_known = level && vat.top_off_per_day.value > 0;
  fields.add_if("days_of_top_off",
                days_known ? std::optional{*level / vat.top_off_per_day} : std::nullopt,
                level ? "the file does not say what the tank takes in a day" : level_why(picture));
  add_upkeep(picture, fields);
  add_quality(picture, fields);
  return fields.done();
}

}  // namespace tidewright::report
