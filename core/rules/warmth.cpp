#include "core/rules/warmth.hpp"

namespace tidewright::rules {
namespace {

constexpr double deadband_degrees = 0.5;

bool is_meant(const room::Instrument& instrument) {
  return instrument.quantity == room::Quantity::temperature &&
         (instrument.place == room::Place::room || instrument.place == room::Place::feed);
}

}  // namespace

Judgement judge_warmth(const picture::Picture& picture, room::RuleId id, Celsius limit,
                       Beyond beyond, Why why) {
  const double sign = beyond == Beyond::above ? 1 : -1;
  const bool active = picture.findings[id].active;
  const double ends = limit.value - (active ? sign * deadband_degrees : 0);
  bool all_good = true;
  for (std::size_t i = 0; i < picture.room.instruments.size(); ++i) {
    if (!is_meant(picture.room.instruments[i])) continue;
    const state::Signal& signal = picture.signals[i];
    all_good = all_good && signal.quality == Quality::good;
    if (!signal.seen || signal.quality == Quality::bad) continue;
    if (sign * (signal.value - ends) <= 0) continue;
    return {Verdict::on,
            {why,
             static_cast<std::uint8_t>(i),
             {static_cast<float>(signal.value), static_cast<float>(limit.value)}},
            never};
  }
  return {all_good ? Verdict::off : Verdict::unknown, {}};
}

bool warmth_is_measured(const room::Room& room) {
  const auto at = [&](room::Place place) {
    return room::find(room, room::Quantity::temperature, place).has_value();
  };
  return room.purifier && (at(room::Place::room) || at(room::Place::feed));
}

}  // namespace tidewright::rules
