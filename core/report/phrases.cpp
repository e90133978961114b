#include "core/report/phrases.hpp"

#include <fmt/format.h>

#include <cmath>

namespace tidewright::report {
namespace {

using room::Place;
using room::Quantity;

std::string_view float_switch(Place place) {
  if (place == Place::concentrate) return "float switch of the concentrate";
  return place == Place::vat_high_high ? "high-high float switch" : "float switch";
}

std::string_view meter_place(Place place) {
  switch (place) {
    case Place::feed:
      return "feed water meter";
    case Place::permeate:
      return "permeate meter";
    case Place::lead_outlet:
      return "meter between the canisters";
    case Place::product:
      return "product water meter";
    case Place::concentrate:
      return "concentrate meter";
    default:
      return "water meter";
  }
}

std::string_view water_meter_place(Place place) {
  switch (place) {
    case Place::feed:
      return "feed flow meter";
    case Place::product:
      return "product flow meter";
    case Place::concentrate:
      return "concentrate flow meter";
    default:
      return "flow meter";
  }
}

std::string_view noun(const room::Instrument& instrument) {
  switch (instrument.quantity) {
    case Quantity::wetness:
      return "leak sensor";
    case Quantity::level:
      return instrument.place == Place::mixing_vat ? "mixing vat gauge" : "vat gauge";
    case Quantity::float_switch:
      return float_switch(instrument.place);
    case Quantity::dissolved_solids:
      return meter_place(instrument.place);
    case Quantity::temperature:
      return "thermometer";
    case Quantity::power:
      return "power meter of the plug";
    case Quantity::feedback:
      return "feedback of the plug";
    case Quantity::flow:
    case Quantity::water_count:
      return water_meter_place(instrument.place);
    case Quantity::pressure:
      return "pressure gauge";
  }
  return "instrument";
}

}  // namespace

std::string number(double value) {
  if (std::abs(value) >= 99.95) return fmt::format("{:.0f}", value);
  std::string text = fmt::format("{:.1f}", value);
  if (text.ends_with(".0")) text.resize(text.size() - 2);
  return text == "-0" ? "0" : text;
}

std::string lasting(Duration span) {
  const auto whole_seconds = std::chrono::round<std::chrono::seconds>(span).count();
  if (whole_seconds < 90) return fmt::format("{} s", whole_seconds);
  const auto minutes = std::chrono::round<std::chrono::minutes>(span).count();
  if (minutes < 90) return fmt::format("{} min", minutes);
  const auto whole_hours = minutes / 60;
  if (whole_hours >= 48) {
    return fmt::format("{} days", std::chrono::round<std::chrono::days>(span).count());
  }
  if (minutes % 60 == 0) return fmt::format("{} h", whole_hours);
  return fmt::format("{} h {} min", whole_hours, minutes % 60);
}

std::string growing(Duration span) {
  const auto minutes = std::chrono::floor<std::chrono::minutes>(span);
  if (minutes < std::chrono::minutes{1}) return "less than a minute";
  if (minutes == std::chrono::minutes{1}) return "1 min";
  return lasting(minutes);
}

std::string instrument_words(const room::Room& room, std::uint8_t index) {
  if (index >= room.instruments.size()) return "an instrument";
  const room::Instrument& instrument = room.instruments[index];
  const auto what = noun(instrument);
  if (instrument.where.empty()) return fmt::format("the {}", what);
  return fmt::format("the {} ({})", what, instrument.where);
}

std::string actuator_words(const room::Room& room, std::uint8_t index) {
  if (index >= room.actuators.size()) return "nothing that is switched";
  const room::Actuator& actuator = room.actuators[index];
  if (!actuator.words.empty()) return actuator.words;
  return fmt::format("the {}", facts(actuator.role).words);
}

std::string supply_words(const room::Room& room, std::uint8_t index) {
  return index < room.supplies.size() ? room.supplies[index].words : std::string("a supply");
}

std::string vat_words(const room::Room& room) {
  return room.vat ? room.vat->id + " vat" : std::string("vat");
}

std::string_view unit(Quantity quantity) {
  switch (quantity) {
    case Quantity::level:
    case Quantity::water_count:
      return "L";
    case Quantity::flow:
      return "L/h";
    case Quantity::pressure:
      return "bar";
    case Quantity::dissolved_solids:
      return "ppm";
    case Quantity::temperature:
      return "°C";
    case Quantity::power:
      return "W";
    case Quantity::wetness:
    case Quantity::float_switch:
    case Quantity::feedback:
      return "";
  }
  return "";
}

std::string sentence(std::string text) {
  if (text.empty()) return text;
  if (text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  if (text.back() != '.' && text.back() != '?') text += '.';
  return text;
}

}  // namespace tidewright::report
