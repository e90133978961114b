#include "daemon/intake/intake.hpp"

#include <algorithm>
#include <optional>
#include <string>

#include "daemon/intake/json_leaf.hpp"
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

std::variant<Shown, Refused> show(const config::Source& source, std::string_view payload) {
  if (payload.size() > payload_bytes_max) return Refused::too_long;
  if (!is_utf8(payload)) return Refused::not_utf8;
  const std::string_view text = trimmed(payload);
  if (text.empty()) return Refused::empty;
  if (source.form == config::Form::json) return shown_in_json(source, text);
  return Shown{Leaf{Leaf::Kind::text, 0, std::string(text)}, ""};
}

bool contains(const std::vector<std::string>& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

// Two-valued quantities speak in words; a number or boolean of JSON is a word as it is written.
std::variant<double, Refused> by_word(const config::Source& source, const Leaf& leaf) {
  const std::string_view word = trimmed(leaf.text);
  if (contains(source.on_words, word)) return 1.0;
  if (contains(source.off_words, word)) return 0.0;
  if (word.empty()) return Refused::empty;
  if (contains(source.unknown_words, word)) return Refused::says_unknown;
  const auto as_number = number(word);
  const auto* why = std::get_if<Refused>(&as_number);
  const bool known_excuse =
      why != nullptr && (*why == Refused::says_unknown || *why == Refused::null);
  return known_excuse ? *why : Refused::unknown_word;
}

std::variant<double, Refused> calibrated(const std::vector<config::CalibrationPoint>& points,
                                         double shown) {
  const auto above = std::find_if(points.begin(), points.end(),
                                  [&](const auto& point) { return point.shown >= shown; });
  if (above == points.end()) return Refused::outside_calibration;
  if (above == points.begin()) {
    if (shown < above->shown) return Refused::outside_calibration;
    return above->meant;
  }
  const auto below = above - 1;
  const double part = (shown - below->shown) / (above->shown - below->shown);
  return below->meant + part * (above->meant - below->meant);
}

// What drivers of one-wire digital thermometers say when the wire is broken (from memory, common
// practice). The 85 that they say at power-up may be true: core/signal judges it by its neighbours.
bool is_failure_value(const config::Source& source, const room::Instrument& instrument,
                      double shown) {
  if (instrument.quantity != room::Quantity::temperature || !source.points.empty()) return false;
  constexpr double of_fahrenheit = 5.0 / 9;
  return (source.scale == 1 && shown == -127) || (source.scale == of_fahrenheit && shown == -196.6);
}

std::variant<double, Refused> by_number(const config::Source& source,
                                        const room::Instrument& instrument, const Leaf& leaf) {
  if (leaf.kind == Leaf::Kind::boolean) return Refused::boolean_for_number;
  if (contains(source.unknown_words, leaf.text)) return Refused::says_unknown;
  double shown = leaf.number;
  if (leaf.kind == Leaf::Kind::text) {
    const auto read = number(trimmed(leaf.text));
    if (const auto* refused = std::get_if<Refused>(&read)) return *refused;
    shown = std::get<double>(read);
  }
  if (is_failure_value(source, instrument, shown)) return Refused::failure_value;
  if (!source.points.empty()) return calibrated(source.points, shown);
  const double meant = shown * source.scale + source.offset;
  if (meant - meant != 0) return Refused::not_finite;
  return meant;
}

bool speaks_in_words(room::Quantity quantity) {
  return quantity == room::Quantity::wetness || quantity == room::Quantity::float_switch ||
         quantity == room::Quantity::feedback;
}

// The source's own time on our line; none if it says none, or one that cannot be.
std::optional<Instant> taken_at(const std::string& time, const WallClock& wall, Instant now) {
  const auto utc = utc_time(trimmed(time), wall.zone);
  if (!utc) return std::nullopt;
  const Instant taken{*utc - wall.ahead};
  if (taken <= long_ago || taken > now + clock_ahead_max) return std::nullopt;
  return std::min(taken, now);
}

}  // namespace

std::variant<Reading, Refused> decode(const config::Source& source,
                                      const room::Instrument& instrument,
                                      room::InstrumentIndex index, const Message& message,
                                      const WallClock& wall, Instant now) {
  const auto shown = show(source, message.payload);
  if (const auto* refused = std::get_if<Refused>(&shown)) return *refused;
  const auto& [leaf, time] = std::get<Shown>(shown);
  const auto meant = speaks_in_words(instrument.quantity) ? by_word(source, leaf)
                                                          : by_number(source, instrument, leaf);
  if (const auto* refused = std::get_if<Refused>(&meant)) return *refused;

  Reading reading{index, std::get<double>(meant), Arrival::live, long_ago};
  if (message.unknown_age) reading.arrival = Arrival::retained;
  if (const auto taken = taken_at(time, wall, now)) {
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
  }
  return "";
}

}  // namespace tidewright::intake
