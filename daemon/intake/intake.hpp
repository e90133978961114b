// The door: a message's payload becomes a measurement in the instrument's own unit, or the reason
// why it is none. Pure and total: no clock, no state, nothing thrown, whatever the bytes.
// Called by daemon/loop for each message of a source; fuzzed by tests/fuzz/intake.cpp.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <variant>

#include "config/household.hpp"
#include "core/base/instant.hpp"
#include "core/event.hpp"
#include "core/room/room.hpp"

namespace tidewright::intake {

inline constexpr std::size_t payload_bytes_max = 65'536;
inline constexpr int json_depth_max = 8;
// What arrives this soon after subscribing is of unknown age, flagged as retained or not.
inline constexpr Duration burst_after_subscribing{2'000};
// A source's own time may be this far ahead of ours; further ahead it is not believed.
inline constexpr Duration clock_ahead_max{60'000};

struct Message {
  std::string_view payload;
  bool unknown_age = false;  // retained, or within burst_after_subscribing
};

// Why a message holds no measurement. Counted per instrument, shown by `words`.
enum class Refused : std::uint8_t {
  empty,
  too_long,
  not_utf8,
  not_json,
  too_deep,
  duplicate_key,
  nothing_there,  // the pointer leads nowhere: counted, but no event; silence is judged by time
  null,
  not_a_single_value,
  boolean_for_number,
  not_finite,
  hexadecimal,
  decimal_comma,
  not_a_number,
  unknown_word,
  says_unknown,
  failure_value,
  outside_calibration,
  not_senml,
  senml_version,
  must_be_understood,
  several_names,
  wrong_unit,
};
inline constexpr std::size_t refused_count = 23;

// One phrase for the log and for `…/source/<id>`: "a comma in place of the decimal point".
std::string_view words(Refused);

// `source` and `instrument` are the household's entries of that `index`. `wall` turns the source's
// own time into an Instant, `now` is the instant at which the message arrived.
// The reading is in the quantity's own unit; 0 or 1 for wetness, float switch and feedback.
std::variant<Reading, Refused> decode(const config::Source& source,
                                      const room::Instrument& instrument,
                                      room::InstrumentIndex index, const Message& message,
                                      const WallClock& wall, Instant now);

// A payload of the instrument's availability topic; `unknown_word` if it is neither word.
std::variant<Availability, Refused> decode(const config::AvailabilityTopic& topic,
                                           room::InstrumentIndex index, std::string_view payload);

}  // namespace tidewright::intake
