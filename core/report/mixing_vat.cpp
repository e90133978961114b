#include "core/report/fields.hpp"
#include "core/report/phrases.hpp"
#include "core/report/things.hpp"

namespace tidewright::report {
namespace {

using picture::Picture;
using room::Place;
using room::Quantity;

std::string not_good(const Picture& picture, Quantity quantity) {
  const auto i = room::find(picture.room, quantity, Place::mixing_vat);
  if (!i) return quantity == Quantity::level ? "there is no gauge" : "there is no thermometer";
  return words(picture.room, signal_reason(picture, *i));
}

std::optional<double> temperature(const Picture& picture) {
  const auto i = room::find(picture.room, Quantity::temperature, Place::mixing_vat);
  if (!i || picture.signals[*i].quality != Quality::good) return std::nullopt;
  return picture.signals[*i].value;
}

}  // namespace

Thing mixing_vat(const Picture& picture) {
  const auto& level = picture.mixing_level;
  const std::string no_level = not_good(picture, Quantity::level);
  Fields fields{"mixing_vat", ""};
  fields.add_if("volume_l", level ? std::optional{level->value} : std::nullopt, no_level)
      .add_if(
          "fill_percent",
          level ? std::optional{100 * (*level / picture.room.mixing_vat->capacity)} : std::nullopt,
          no_level, 0)
      .add_if("temperature_c", temperature(picture), not_good(picture, Quantity::temperature))
      .add("quality", std::string(level ? "good" : "bad"));
  return fields.done();
}

}  // namespace tidewright::report
