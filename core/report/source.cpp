#include "core/report/fields.hpp"
#include "core/report/phrases.hpp"
#include "core/report/things.hpp"

namespace tidewright::report {
namespace {

using picture::Picture;
using room::Quantity;

// The name of its value, with the unit.
std::string value_name(Quantity quantity) {
  switch (quantity) {
    case Quantity::wetness:
      return "wet";
    case Quantity::level:
      return "volume_l";
    case Quantity::float_switch:
      return "reached";
    case Quantity::dissolved_solids:
      return "dissolved_solids_ppm";
    case Quantity::temperature:
      return "temperature_c";
    case Quantity::power:
      return "power_w";
    case Quantity::feedback:
      return "on";
    case Quantity::flow:
      return "flow_l_h";
    case Quantity::water_count:
      return "counted_l";
    case Quantity::pressure:
      return "pressure_bar";
  }
  return "value";
}

bool is_switch(Quantity quantity) { return unit(quantity).empty(); }

}  // namespace

std::string quality_word(Quality quality) {
  switch (quality) {
    case Quality::good:
      return "good";
    case Quality::uncertain:
      return "uncertain";
    case Quality::bad:
      return "bad";
  }
  return "bad";
}

// As NAMUR NE 107 names them.
std::string status_word(DeviceStatus status) {
  switch (status) {
    case DeviceStatus::normal:
      return "normal";
    case DeviceStatus::failure:
      return "failure";
    case DeviceStatus::check_function:
      return "check_function";
    case DeviceStatus::out_of_specification:
      return "out_of_specification";
    case DeviceStatus::maintenance_required:
      return "maintenance_required";
  }
  return "failure";
}

Reason signal_reason(const Picture& picture, room::InstrumentIndex i) {
  const room::Instrument& instrument = picture.room.instruments[i];
  const state::Signal& signal = picture.signals[i];
  const Instant heard = std::max(signal.received, picture.circumstances.started);
  const auto silent = static_cast<float>(seconds(picture.now - heard));
  const auto f = [](double value) { return static_cast<float>(value); };
  Reason reason{signal.why, i, {}};
  switch (signal.why) {
    case Why::never_seen:
      reason.numbers = {silent, 0, 0};
      break;
    case Why::stale:
      reason.numbers = {silent, f(seconds(room::stale_after(instrument))), 0};
      break;
    case Why::outside_gross_range:
      reason.numbers = {f(signal.value), f(instrument.gross_low), f(instrument.gross_high)};
      break;
    case Why::outside_plausible_range:
      reason.numbers = {f(signal.value), f(instrument.plausible_low), f(instrument.plausible_high)};
      break;
    default:
      if (signal.why == signal.doubt) {
        reason.numbers = {signal.doubt_numbers[0], signal.doubt_numbers[1], 0};
      }
      break;
  }
  return reason;
}

Thing source(const Picture& picture, room::InstrumentIndex i) {
  const room::Instrument& instrument = picture.room.instruments[i];
  const state::Signal& signal = picture.signals[i];
  const bool online =
      picture.circumstances.link_up && signal.available && signal.live && signal.why != Why::stale;
  Fields fields{"source", instrument.id};
  fields.add("online", online);
  const std::string name = value_name(instrument.quantity);
  if (!signal.seen) {
    fields.unknown(name, "no reading yet");
  } else if (is_switch(instrument.quantity)) {
    fields.add(name, signal.value >= 0.5);
  } else {
    fields.add(name, signal.value);
  }
  fields.add("quality", quality_word(signal.quality))
      .add("status", status_word(signal.status))
      .add("why", words(picture.room, signal_reason(picture, i)))
      .add_if("received",
              signal.received == long_ago
                  ? std::nullopt
                  : std::optional{wall_time(signal.received, picture.circumstances.wall)},
              "no live reading yet")
      .add("refused", static_cast<double>(signal.refused), 0);
  return fields.done();
}

}  // namespace tidewright::report
