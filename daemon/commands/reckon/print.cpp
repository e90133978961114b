#include "daemon/commands/reckon/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <sstream>

#include "core/report/outside.hpp"
#include "core/water/uncertainty.hpp"

namespace tidewright::commands::reckon {
namespace {

// Bytes that go on in a letter of UTF-8 take no room on the screen.
std::size_t width(const std::string& text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

std::string padded(const std::string& text, std::size_t to) {
  const std::size_t has = width(text);
  return text + std::string(has < to ? to - has : 0, ' ');
}

// To so many decimals, below 0 to tens and hundreds; without the sign of a nothing that came out
// negative.
std::string rounded(double value, int decimals) {
  if (decimals < 0) {
    const double unit = std::pow(10, -decimals);
    value = std::round(value / unit) * unit;
  }
  const std::string text = fmt::format("{:.{}f}", value, std::max(0, decimals));
  const bool nothing = text.find_first_of("123456789") == std::string::npos;
  return nothing && text.front() == '-' ? text.substr(1) : text;
}

// An uncertainty is shown with two digits, and its value with as many decimals.
int decimals(const std::optional<double>& uncertainty, int most) {
  if (!uncertainty || *uncertainty <= 0) return most;
  const double digits = 1 - std::floor(std::log10(*uncertainty));
  return static_cast<int>(std::min(digits, static_cast<double>(most)));
}

// "101.2 ± 1.2"
std::string shown(double value, const std::optional<double>& uncertainty, int most) {
  const int digits = decimals(uncertainty, most);
  const std::string text = rounded(value, digits);
  return uncertainty ? text + " ± " + rounded(*uncertainty, digits) : text;
}

std::string shown(const Result& result, bool customary) {
  if (const auto* text = std::get_if<std::string>(&result.value)) return *text;
  const double value = std::get<double>(result.value);
  const UnitWords& unit = words(result.unit);
  std::string line = shown(value, result.uncertainty, result.decimals);
  if (!unit.word.empty()) line += fmt::format(" {}", unit.word);
  if (customary && !unit.customary_word.empty()) {
    const auto uncertainty =
        result.uncertainty ? std::optional(*result.uncertainty / unit.factor) : std::nullopt;
    line += fmt::format("  ({} {})",
                        shown(to_customary(result.unit, value), uncertainty,
                              result.unit == Unit::grams ? 3 : result.decimals),
                        unit.customary_word);
  }
  return line;
}

constexpr std::size_t label_width = 13;
constexpr std::size_t line_width = 92;

// A label, and its words on as many lines as they need.
void say(std::string& text, const char* what, const std::string& words) {
  if (words.empty()) return;
  std::string line = padded(what, label_width);
  std::istringstream in(words);
  for (std::string word; in >> word;) {
    if (width(line) + width(word) > line_width) {
      text += line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
      line = std::string(label_width, ' ');
    }
    line += word + " ";
  }
  text += line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
}

}  // namespace

std::string as_text(const Reckoned& reckoned, bool customary) {
  std::size_t column = label_width;
  for (const Result& result : reckoned.results) {
    column = std::max(column, width(result.label) + 2);
  }
  std::string text;
  for (const Result& result : reckoned.results) {
    text += padded(result.label, column) + shown(result, customary) + "\n";
  }
  text += "\n";
  say(text, "formula", reckoned.formula);
  say(text, "source", reckoned.source);
  say(text, "how sure", reckoned.sureness);
  if (reckoned.remark) {
    say(text, "remark",
        report::words(*reckoned.remark) + ": the formula was not made for that; trust it less");
  }
  for (const std::string& hint : reckoned.hints) say(text, "note", hint);
  for (const std::string& caution : reckoned.cautions) say(text, "caution", caution);
  return text;
}

std::string as_json(const Reckoned& reckoned) {
  nlohmann::ordered_json document = nlohmann::ordered_json::object();
  nlohmann::ordered_json uncertainty = nlohmann::ordered_json::object();
  for (const Result& result : reckoned.results) {
    std::visit([&](const auto& value) { document[result.key] = value; }, result.value);
    if (result.uncertainty) uncertainty[result.key] = *result.uncertainty;
  }
  document["in_range"] = !reckoned.remark;
  if (!uncertainty.empty()) {
    document["uncertainty"] = uncertainty;
    document["coverage_factor"] = water::coverage_factor;
  }
  document["formula"] = reckoned.formula;
  document["source"] = reckoned.source;
  document["how_sure"] = reckoned.sureness;
  if (reckoned.remark) document["remark"] = report::words(*reckoned.remark);
  if (!reckoned.hints.empty()) document["notes"] = reckoned.hints;
  if (!reckoned.cautions.empty()) document["cautions"] = reckoned.cautions;
  return document.dump(2) + "\n";
}

std::string as_text(const Refusal& refusal, std::string_view quantity) {
  std::string text = fmt::format("`tidewright reckon{}{}` has no answer.\n",
                                 quantity.empty() ? "" : " ", quantity);
  say(text, "where", refusal.where);
  say(text, "found", refusal.found);
  say(text, "expected", refusal.expected);
  say(text, "allowed", refusal.allowed);
  say(text, "what to do", refusal.remedy);
  return text;
}

}  // namespace tidewright::commands::reckon
