#include "tests/pretend_room/payload.hpp"

#include <fmt/core.h>

#include <cmath>
#include <cstddef>
#include <nlohmann/json.hpp>

namespace tidewright::pretend {
namespace {

using room::Quantity;

bool is_switch(Quantity quantity) {
  return quantity == Quantity::wetness || quantity == Quantity::float_switch ||
         quantity == Quantity::feedback;
}

// The display's figure that the calibration turns into `meant`; the curve's ends stand for what
// lies beyond them.
double shown_by(const std::vector<config::CalibrationPoint>& points, double meant) {
  if (meant <= points.front().meant) return points.front().shown;
  for (std::size_t i = 1; i < points.size(); ++i) {
    const auto& low = points[i - 1];
    const auto& high = points[i];
    if (meant > high.meant) continue;
    return low.shown + (meant - low.meant) / (high.meant - low.meant) * (high.shown - low.shown);
  }
  return points.back().shown;
}

double shown(const config::Source& source, double value) {
  const double figure = source.points.empty() ? (value - source.offset) / source.scale
                                              : shown_by(source.points, value);
  return std::round(figure * 1000) / 1000 + 0.0;  // no display shows more; and no "-0"
}

// Before and after "{seconds}"; whole if there is none.
bool fits(std::string_view pattern, std::string_view payload) {
  constexpr std::string_view mark = "{seconds}";
  const std::size_t at = pattern.find(mark);
  if (at == std::string_view::npos) return payload == pattern;
  return payload.size() >= pattern.size() - mark.size() &&
         payload.starts_with(pattern.substr(0, at)) &&
         payload.ends_with(pattern.substr(at + mark.size()));
}

}  // namespace

std::string payload(const config::Source& source, const room::Instrument& instrument,
                    double value) {
  const auto& words = value >= 0.5 ? source.on_words : source.off_words;
  const bool as_word = is_switch(instrument.quantity) && !words.empty();
  if (source.form != config::Form::json) {
    return as_word ? words.front() : fmt::format("{}", shown(source, value));
  }
  nlohmann::json leaf =
      as_word ? nlohmann::json(words.front()) : nlohmann::json(shown(source, value));
  if (source.pointer.empty()) return leaf.dump();
  nlohmann::json document;
  document[nlohmann::json::json_pointer(source.pointer)] = leaf;
  return document.dump();
}

std::optional<bool> command(const config::Outlet& outlet, std::string_view payload) {
  if (fits(outlet.on, payload)) return true;
  if (fits(outlet.off, payload)) return false;
  return std::nullopt;
}

}  // namespace tidewright::pretend
