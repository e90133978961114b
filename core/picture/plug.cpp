// What a plug says of itself: believed only when good.
#include "core/picture/picture.hpp"

namespace tidewright::picture {

std::optional<bool> confirmed(const Picture& picture, room::ActuatorIndex actuator) {
  const auto feedback = room::find(picture.room, room::Quantity::feedback, actuator);
  if (!feedback || picture.signals[*feedback].quality != Quality::good) return std::nullopt;
  return picture.signals[*feedback].value > 0.5;
}

std::optional<Watts> power(const Picture& picture, room::ActuatorIndex actuator) {
  const auto meter = room::find(picture.room, room::Quantity::power, actuator);
  if (!meter || picture.signals[*meter].quality != Quality::good) return std::nullopt;
  return Watts{picture.signals[*meter].value};
}

}  // namespace tidewright::picture
