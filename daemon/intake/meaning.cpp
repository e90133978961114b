#include "daemon/intake/meaning.hpp"

#include <algorithm>

#include "daemon/intake/senml_unit.hpp"
#include "daemon/intake/text.hpp"

namespace tidewright::intake {
namespace {

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

}  // namespace

std::variant<double, Refused> meaning(const config::Source& source,
                                      const room::Instrument& instrument, const Leaf& leaf) {
  return speaks_in_words(instrument.quantity) ? by_word(source, leaf)
                                              : by_number(source, instrument, leaf);
}

std::variant<double, Refused> meaning(const config::Source& source,
                                      const room::Instrument& instrument,
                                      const SenmlRecord& record) {
  const bool in_words = speaks_in_words(instrument.quantity);
  if (in_words && record.value.kind == Leaf::Kind::boolean) return record.value.number;
  if (in_words || record.unit.empty() || !source.points.empty()) {
    return meaning(source, instrument, record.value);
  }
  if (record.value.kind != Leaf::Kind::number) return Refused::not_a_number;
  const auto unit = senml_unit(record.unit, instrument.quantity, source.whole);
  if (!unit) return Refused::wrong_unit;
  const double meant = record.value.number * unit->factor + unit->offset;
  if (meant - meant != 0) return Refused::not_finite;
  return meant;
}

}  // namespace tidewright::intake
