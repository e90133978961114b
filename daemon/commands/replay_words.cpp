#include "daemon/commands/replay_words.hpp"

#include <fmt/format.h>

#include "core/report/phrases.hpp"
#include "core/report/report.hpp"
#include "core/rules/catalogue.hpp"
#include "daemon/store/names.hpp"

namespace tidewright::commands {
namespace {

std::string value_words(const room::Instrument& instrument, double value) {
  const bool yes = value >= 0.5;
  switch (instrument.quantity) {
    case room::Quantity::wetness:
      return yes ? "wet" : "dry";
    case room::Quantity::float_switch:
      return yes ? "reached" : "not reached";
    case room::Quantity::feedback:
      return yes ? "ON" : "OFF";
    default:
      return fmt::format("{} {}", report::number(value), report::unit(instrument.quantity));
  }
}

// An event's kind in words, with the room to name things by.
struct EventWords {
  const room::Room& room;

  std::string instrument(std::uint8_t index) const { return report::instrument_words(room, index); }

  std::string operator()(const Tick&) const { return "time passes"; }
  std::string operator()(const Stopping&) const { return "tidewright is told to stop"; }
  std::string operator()(const Reading& reading) const {
    const char* age = reading.arrival == Arrival::retained ? " (of unknown age)" : "";
    return fmt::format("{} says {}{}", instrument(reading.instrument),
                       value_words(room.instruments[reading.instrument], reading.value), age);
  }
  std::string operator()(const Refusal& refusal) const {
    return instrument(refusal.instrument) + " sends something that is no reading";
  }
  std::string operator()(const Availability& availability) const {
    return fmt::format("{} is {}", instrument(availability.instrument),
                       availability.online ? "online" : "offline");
  }
  std::string operator()(const Link& link) const {
    return link.up ? "the broker is connected" : "the broker is lost";
  }
  std::string operator()(const Delivery& delivery) const {
    return fmt::format("the broker answers the {} to {} with code {}", delivery.on ? "ON" : "OFF",
                       report::actuator_words(room, delivery.actuator), delivery.code);
  }
  std::string operator()(const Started& started) const {
    return fmt::format("tidewright starts {}, away for {}",
                       started.clean ? "cleanly" : "after an end without notice",
                       report::lasting(started.away));
  }
  std::string operator()(const ClockSet&) const { return "the clock is set"; }
  std::string operator()(const Recorded& recorded) const {
    return recorded.ok ? "the disk takes what it is given" : "the disk refuses what it is given";
  }
  std::string operator()(const Ask& ask) const {
    return fmt::format("{} asks: {} {}", ask.who.view(), store::name(ask.kind),
                       rules::rule(ask.alarm).name);
  }
  std::string operator()(const Tell& tell) const {
    std::string told = fmt::format("{} tells: {}", tell.who.view(), store::name(tell.kind));
    if (tell.supply >= room.supplies.size()) return told;
    const room::Supply& supply = room.supplies[tell.supply];
    return fmt::format("{} {} {} {}", told, supply.id, tell.value, supply.unit);
  }
};

struct EffectWords {
  const room::Room& room;
  const State& state;

  std::string operator()(const Command& command) const {
    return fmt::format("{} to {}: {}", command.on ? "ON" : "OFF",
                       report::actuator_words(room, command.actuator),
                       report::words(room, state.drives[command.actuator].why));
  }
  std::string operator()(const Persist&) const { return "stored before it is announced"; }
  std::string operator()(const Announcement& announcement) const {
    const report::Message message = report::message(room, state, announcement);
    return fmt::format("{}: {} ({} {}). {}", message.event, message.title, message.id,
                       message.occurrence, message.text);
  }
  std::string operator()(const Answer& answer) const {
    return fmt::format("answer: {}", report::words(room, answer.why));
  }
};

}  // namespace

std::string words(const room::Room& room, const Event& event) {
  return std::visit(EventWords{room}, event.what);
}

std::string words(const room::Room& room, const State& state, const Effect& effect) {
  return std::visit(EffectWords{room, state}, effect);
}

}  // namespace tidewright::commands
