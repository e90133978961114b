// The ways to salinity: which reading a person typed, what it stands on, and what the instrument
// itself measured.
#pragma once

#include <optional>
#include <string_view>
#include <variant>

#include "core/water/conductivity_compensation.hpp"
#include "core/water/instrument.hpp"
#include "daemon/commands/reckon/quantity.hpp"

namespace tidewright::commands::reckon {

inline constexpr std::string_view compensated_conductivity = "conductivity-at-25-ms-cm";

struct Way {
  water::Instrument::Reads reads;
  std::string_view option;
  const char* instrument;  // the usual one
  bool needs_temperature;
  const char* formula;
  const char* source;

  bool compensated() const { return option == compensated_conductivity; }
};

// The one reading that was typed; refused if there is none, or a second one.
std::variant<const Way*, Refusal> typed_way(const Inputs& inputs, const char* example);

// What the instrument of a way measured: a compensated conductivity is raw again.
struct Measured {
  double reading;
  Celsius temperature;
  water::GravityScale scale = water::GravityScale::celsius_25_25;  // of a hydrometer
  std::optional<water::Compensation> undone{};
};

// Refused without the temperature, a hydrometer's scale or a meter's law, where they are needed.
std::variant<Measured, Refusal> measured(const Way& way, const Inputs& inputs);

// Whose uncertainty is meant: the way's usual instrument, or the one that was named.
std::variant<water::Instrument, Refusal> typed_instrument(const Way& way, const Inputs& inputs);

}  // namespace tidewright::commands::reckon
