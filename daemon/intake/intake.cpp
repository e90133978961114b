#include "daemon/intake/intake.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include "daemon/intake/json_leaf.hpp"
#include "daemon/intake/meaning.hpp"
#include "daemon/intake/senml.hpp"
#include "daemon/intake/source_time.hpp"
#include "daemon/intake/text.hpp"

namespace tidewright::intake {
namespace {

// What a payload shows, before it means anything: the value, and the source's own time as text.
struct Shown {
  Leaf value;
  std::string time;
};

std::variant<Shown, Refused> shown_in_json(const config::Source& source, std::string_view payload) {
  std::vector<std::string_view> pointers{source.pointer};
  if (!source.time_pointer.empty()) pointers.push_back(source.time_pointer);
  auto found = find_leaves(payload, pointers);
  if (const auto* refused = std::get_if<Refused>(&found)) return *refused;
  auto& leaves = std::get<0>(found);
  if (!leaves[0]) return Refused::nothing_there;
  if (leaves[0]->kind == Leaf::Kind::null) return Refused::null;
  if (leaves[0]->kind == Leaf::Kind::structure) return Refused::not_a_single_value;
  Shown shown{*leaves[0], ""};
  if (leaves.size() > 1 && leaves[1]) shown.time = leaves[1]->text;
  return shown;
}

std::variant<Shown, Refused> show(const config::Source& source, std::string_view text) {
  if (source.form == config::Form::json) return shown_in_json(source, text);
  return Shown{Leaf{Leaf::Kind::text, 0, std::string(text)}, ""};
}

// On our line; none if it cannot be.
std::optional<Instant> believable(Instant taken, Instant now) {
  if (taken <= long_ago || taken > now + clock_ahead_max) return std::nullopt;
  return std::min(taken, now);
}

// The source's own time on our line; none if it says none, or one that cannot be.
std::optional<Instant> taken_at(const std::string& time, const WallClock& wall, Instant now) {
  const auto utc = utc_time(trimmed(time), wall.zone);
  if (!utc) return std::nullopt;
  return believable(Instant{*utc - wall.ahead}, now);
}

// A time that is relative to now says nothing in a message of unknown age; 0 says "now", which is
// no more than that the message has come.
std::optional<Instant> taken_at(const SenmlRecord& record, const Message& message,
                                const WallClock& wall, Instant now) {
  constexpr double farthest_seconds = 1e11;  // some 3,000 years
  if (std::abs(record.seconds) > farthest_seconds) return std::nullopt;
  const Duration time{std::llround(record.seconds * 1000)};
  if (record.absolute) return believable(Instant{time - wall.ahead}, now);
  if (message.unknown_age || time == Duration{0}) return std::nullopt;
  return believable(now + time, now);
}

struct Measured {
  double value = 0;
  std::optional<Instant> taken = std::nullopt;
};

// Danger counts whenever it comes; that a plug was on a minute ago is none.
bool old_news_counts(room::Quantity quantity) {
  return quantity == room::Quantity::wetness || quantity == room::Quantity::float_switch;
}

// The latest of them, the later in the pack where they are of one time; but one that tells danger
// goes before. There is at least one.
const SenmlRecord& telling(const std::vector<SenmlRecord>& records, const config::Source& source,
                           const room::Instrument& instrument) {
  const SenmlRecord* latest = &records.front();
  for (const SenmlRecord& record : records) {
    if (old_news_counts(instrument.quantity)) {
      const auto meant = meaning(source, instrument, record);
      const auto* value = std::get_if<double>(&meant);
      if (value != nullptr && *value > 0) return record;
    }
    if (record.seconds >= latest->seconds) latest = &record;
  }
  return *latest;
}

std::variant<Measured, Refused> measured_in_pack(const config::Source& source,
                                                 const room::Instrument& instrument,
                                                 const Message& message, const WallClock& wall,
                                                 Instant now) {
  const auto found = senml_records(trimmed(message.payload), source.senml_name);
  if (const auto* refused = std::get_if<Refused>(&found)) return *refused;
  const SenmlRecord& record = telling(std::get<0>(found), source, instrument);
  const auto meant = meaning(source, instrument, record);
  if (const auto* refused = std::get_if<Refused>(&meant)) return *refused;
  return Measured{std::get<double>(meant), taken_at(record, message, wall, now)};
}

std::variant<Measured, Refused> measured(const config::Source& source,
                                         const room::Instrument& instrument, const Message& message,
                                         const WallClock& wall, Instant now) {
  if (message.payload.size() > payload_bytes_max) return Refused::too_long;
  if (!is_utf8(message.payload)) return Refused::not_utf8;
  const std::string_view text = trimmed(message.payload);
  if (text.empty()) return Refused::empty;
  if (source.form == config::Form::senml) {
    return measured_in_pack(source, instrument, message, wall, now);
  }
  const auto shown = show(source, text);
  if (const auto* refused = std::get_if<Refused>(&shown)) return *refused;
  const auto& [leaf, time] = std::get<Shown>(shown);
  const auto meant = meaning(source, instrument, leaf);
  if (const auto* refused = std::get_if<Refused>(&meant)) return *refused;
  return Measured{std::get<double>(meant), taken_at(time, wall, now)};
}

}  // namespace

std::variant<Reading, Refused> decode(const config::Source& source,
                                      const room::Instrument& instrument,
                                      room::InstrumentIndex index, const Message& message,
                                      const WallClock& wall, Instant now) {
  const auto found = measured(source, instrument, message, wall, now);
  if (const auto* refused = std::get_if<Refused>(&found)) return *refused;
  const auto& [value, taken] = std::get<Measured>(found);
  Reading reading{index, value, Arrival::live, long_ago};
  if (message.unknown_age) reading.arrival = Arrival::retained;
  if (taken) {
    reading.taken = *taken;
    // A device that sends what it stored while it was away speaks of then, not of now.
    const bool old = now - *taken > stale_after(instrument);
    if (message.unknown_age || old) reading.arrival = Arrival::dated;
  }
  return reading;
}

std::variant<Availability, Refused> decode(const config::AvailabilityTopic& topic,
                                           room::InstrumentIndex index, std::string_view payload) {
  const std::string_view word = trimmed(payload.substr(0, payload_bytes_max));
  if (word == topic.online) return Availability{index, true};
  if (word == topic.offline) return Availability{index, false};
  return word.empty() ? Refused::empty : Refused::unknown_word;
}

std::string_view words(Refused why) {
  switch (why) {
    case Refused::empty:
      return "an empty message";
    case Refused::too_long:
      return "more than 64 KiB";
    case Refused::not_utf8:
      return "bytes that are no text (not UTF-8)";
    case Refused::not_json:
      return "not JSON";
    case Refused::too_deep:
      return "JSON with more than 8 levels";
    case Refused::duplicate_key:
      return "JSON that names a key twice";
    case Refused::nothing_there:
      return "JSON without the expected field";
    case Refused::null:
      return "null instead of a value";
    case Refused::not_a_single_value:
      return "a list or an object instead of a value";
    case Refused::boolean_for_number:
      return "true or false instead of a number";
    case Refused::not_finite:
      return "not a finite number";
    case Refused::hexadecimal:
      return "a hexadecimal number";
    case Refused::decimal_comma:
      return "a comma in place of the decimal point";
    case Refused::not_a_number:
      return "not a number";
    case Refused::unknown_word:
      return "a word that the household file does not know";
    case Refused::says_unknown:
      return "the instrument says that it does not know";
    case Refused::failure_value:
      return "a value that such sensors send when they fail";
    case Refused::outside_calibration:
      return "outside the calibration points";
    case Refused::not_senml:
      return "JSON that is no SenML pack";
    case Refused::senml_version:
      return "SenML of a version above 10";
    case Refused::must_be_understood:
      return "SenML with a label that must be understood and is not";
    case Refused::several_names:
      return "SenML with several names, of which the file names none";
    case Refused::wrong_unit:
      return "SenML in a unit that is not of what the instrument measures";
  }
  return "";
}

}  // namespace tidewright::intake
