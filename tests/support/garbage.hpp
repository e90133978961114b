// Payloads that hold no measurement, as data: what a sensor, a script, a bridge or a stranger may
// publish on an instrument's topic. Used on the door alone and over a real broker.
#pragma once

#include <string>
#include <vector>

#include "daemon/intake/intake.hpp"

namespace tidewright::support {

enum class Listens : std::uint8_t {
  for_a_number,   // a temperature in plain text
  for_a_word,     // a leak sensor: wet / dry
  for_json,       // a temperature at /t
  for_json_word,  // a leak sensor at /leak, with words wet / dry and true / false
  for_senml,      // a meter of dissolved solids in SenML packs of one name
};

struct Garbage {
  Listens listens;
  std::string payload;
  intake::Refused because;
};

const std::vector<Garbage>& garbage();

}  // namespace tidewright::support
