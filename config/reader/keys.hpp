// The household file's grammar as data: one row per key. The parser, the suggestions, `list keys`
// and the table in the docs all read these rows; a new key is one row and its broken pair.
#pragma once

#include <cstdint>
#include <span>
#include <string_view>

namespace tidewright::config {

// Groups of keys that stand together.
enum class Part : std::uint8_t {
  file,          // before the first section
  broker,        // [broker]
  hub,           // [hub]
  panel,         // [panel]
  alerts,        // [alerts]
  webhook,       // [webhook]
  mail,          // [mail]
  vat,           // [vat.<id>]
  mixing_vat,    // [mixing_vat]
  leak,          // [leak.<id>], with instrument and word
  purifier,      // [purifier]
  temperature,   // [temperature.<id>], with instrument and number
  actuator,      // [actuator.<id>]
  supply,        // [supply.<id>]
  rule,          // [rule.<name>]
  instrument,    // every instrument
  word,          // instruments that say one of two words
  number,        // instruments that show a number
  water_meter,   // `…_flow`, with instrument and number
  float_switch,  // `full` and `high_high`, with instrument and word
  feedback,      // `feedback`, with instrument and word
  availability,  // `availability`
};
inline constexpr std::size_t part_count = 22;

// How a value is written.
enum class Kind : std::uint8_t {
  text,
  id,        // `[a-z0-9_-]{1,64}`
  topic,     // MQTT topic without wildcards
  pointer,   // RFC 6901
  words,     // one text, or a list of them
  sentence,  // exactly the example's words
  choice,    // one of the example's, which are parted by " | "
  yes_no,    // true or false
  count,     // whole number
  number,    // without a unit
  hours,     // "08:00-22:00"
  volume,    // quantities: a number and its unit
  level,     // a volume, or a share of the vat
  share,
  time,
  flow,
  solids,  // the bare number is allowed, for the key's name says ppm
  temperature,
  power,
  pressure,
  own_unit,    // in terms of what the instrument measures: a unit
  own_step,    //   a quantity
  own_range,   //   a list of two quantities
  own_points,  //   a list of pairs: number shown, quantity meant
  // Tables. Those with a `topic` alone may be written as that topic.
  level_gauge,
  thermometer,
  solids_meter,
  power_meter,
  flow_meter,  // shows a flow, or counts litres
  pressure_meter,
  twin,  // a second one, of whatever kind its table is of
  float_switch,
  feedback,
  availability,
};

enum class Need : std::uint8_t { required, optional };

struct Key {
  Part part{};
  std::string_view name;
  Kind kind{};
  Need need{};
  std::string_view example;   // as it would stand in the file, without quotes
  std::string_view standard;  // what holds if it is not given; empty = nothing
  std::string_view low;       // least and greatest value; empty = not limited
  std::string_view high;
  std::string_view help;
};

// Of every part, in the order of Part and of this list's use in a file.
std::span<const Key> keys();

// A name that people try, and the key that does it.
struct Heir {
  std::string_view name;
  std::string_view key;
  std::string_view why;
  bool secret = false;  // what stands there must not be repeated
};
std::span<const Heir> heirs();

// A section of the file, and the keys that stand in it.
struct SectionKind {
  std::string_view name;
  bool named = false;  // `[vat.<id>]`: one for each thing of its kind
  std::span<const Part> parts;
};
std::span<const SectionKind> section_kinds();

// "[vat.<id>]": what a part is called in messages and docs.
std::string_view title(Part);
// The parts of a table kind (level_gauge ...); empty for a plain value.
std::span<const Part> parts_of(Kind);

}  // namespace tidewright::config
