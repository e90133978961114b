#include "core/picture/resin.hpp"

#include "core/report/fields.hpp"
#include "core/report/phrases.hpp"
#include "core/report/things.hpp"

namespace tidewright::report {
namespace {

using picture::Picture;

std::string no_forecast_why(const Picture& picture) {
  const auto meter =
      room::find(picture.room, room::Quantity::dissolved_solids, room::Place::permeate);
  if (!meter) return "it needs a meter between membrane and resin";
  if (picture.ledger.resin_changed == long_ago) {
    return "nobody has told yet when the resin was changed: tell `rotated` or `replaced`";
  }
  return "too little water has passed since the resin was changed";
}

std::string advice(const Picture& picture, const picture::ResinForecast& forecast) {
  if (forecast.used >= 1) return "rotate the canisters now";
  const auto& soon = picture.findings[room::RuleId::resin_near_end];
  return soon.active ? "order resin, and rotate when it is there" : "nothing to do yet";
}

std::string day_after(const Picture& picture, double days) {
  const auto whole = Duration{static_cast<Duration::rep>(days)} * (24 * 3'600'000);
  return date(picture.now + whole, picture.circumstances.wall);
}

}  // namespace

Thing resin(const Picture& picture) {
  const auto forecast = picture::resin_forecast(picture.room, picture.ledger, picture.now);
  Fields fields{"resin", "lead"};
  fields.add("position", std::string("lead")).add("passed_l", picture.ledger.resin.passed.value, 0);
  if (!forecast) {
    const std::string why = no_forecast_why(picture);
    for (const char* name : {"litres_left", "used_percent", "days_left", "spent_at"}) {
      fields.unknown(name, why);
    }
    return fields.add("advice", std::string{}).done();
  }
  const std::string no_pace = "its pace is not known in the first three days";
  const auto& days = forecast->days;
  fields.add("litres_left", forecast->left.value, 0)
      .add("used_percent", 100 * forecast->used, 0)
      .add_if("days_left", days, no_pace, 0)
      .add_if("spent_at",
              days && *days < 3650 ? std::optional{day_after(picture, *days)} : std::nullopt,
              days ? "not within ten years" : no_pace)
      .add("advice", advice(picture, *forecast));
  return fields.done();
}

}  // namespace tidewright::report
