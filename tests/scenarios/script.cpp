#include "tests/scenarios/script.hpp"

#include <array>
#include <charconv>
#include <sstream>
#include <stdexcept>
#include <utility>

namespace tidewright::scenarios {
namespace {

long number_of(std::string_view digits) {
  long number = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
  if (digits.empty() || error != std::errc{} || end != digits.data() + digits.size()) {
    throw std::runtime_error("not a number: " + std::string(digits));
  }
  return number;
}

// hours:minutes or hours:minutes:seconds
Duration time_of(std::string_view word) {
  long total = 0;
  long worth = 3600;
  for (; worth > 0; worth /= 60) {
    const std::size_t colon = word.find(':');
    total += worth * number_of(word.substr(0, colon));
    if (colon == std::string_view::npos) break;
    word.remove_prefix(colon + 1);
  }
  return std::chrono::seconds{total};
}

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(' ') - first + 1);
}

}  // namespace

Duration duration_of(std::string_view words) {
  static constexpr std::array<std::pair<std::string_view, long>, 3> units{
      {{"s", 1}, {"min", 60}, {"h", 3600}}};
  const std::size_t space = words.find(' ');
  for (const auto& [unit, worth] : units) {
    if (space != std::string_view::npos && words.substr(space + 1) == unit) {
      return std::chrono::seconds{worth * number_of(words.substr(0, space))};
    }
  }
  throw std::runtime_error("not a duration: " + std::string(words));
}

Script read_script(std::string_view text) {
  Script script;
  std::istringstream file{std::string(text)};
  std::string raw;
  for (int number = 1; std::getline(file, raw); ++number) {
    const std::string_view line = trimmed(raw);
    if (line.starts_with('#') && script.setting.empty()) script.about += line.substr(1);
    if (line.empty() || line.starts_with('#')) continue;
    if (line.front() < '0' || line.front() > '9') {
      script.setting.push_back({number, Duration{0}, std::string(line)});
      continue;
    }
    const std::size_t space = line.find(' ');
    if (space == std::string_view::npos) throw std::runtime_error("nothing happens: " + raw);
    const Duration at = time_of(line.substr(0, space));
    if (!script.lines.empty() && at < script.lines.back().at) {
      throw std::runtime_error("line " + std::to_string(number) + ": time runs backwards");
    }
    script.lines.push_back({number, at, std::string(trimmed(line.substr(space)))});
  }
  return script;
}

}  // namespace tidewright::scenarios
