#include "core/water/gravity_scale.hpp"

#include <array>

namespace tidewright::water {
namespace {

constexpr Celsius from_fahrenheit(double fahrenheit) { return {(fahrenheit - 32) / 1.8}; }

struct Entry {
  GravityScale scale;
  std::string_view text;
  std::string_view also;
  GravityTemperatures temperatures;
};

// "4" stands for the temperature of water's greatest density.
constexpr Celsius densest{3.98};

constexpr std::array entries{
    Entry{GravityScale::celsius_25_25, "25/25", "77F/77F", {{25}, {25}}},
    Entry{GravityScale::celsius_20_20, "20/20", "68F/68F", {{20}, {20}}},
    Entry{GravityScale::fahrenheit_60_60,
          "60F/60F",
          "60F/60F",
          {from_fahrenheit(60), from_fahrenheit(60)}},
    Entry{GravityScale::celsius_17_5_17_5, "17.5/17.5", "17.5/17.5", {{17.5}, {17.5}}},
    Entry{GravityScale::celsius_15_15, "15/15", "59F/59F", {{15}, {15}}},
    Entry{GravityScale::celsius_15_4, "15/4", "15/4", {{15}, densest}},
    Entry{GravityScale::celsius_20_4, "20/4", "20/4", {{20}, densest}},
    Entry{GravityScale::celsius_25_4, "25/4", "25/4", {{25}, densest}},
};

const Entry& entry(GravityScale scale) {
  for (const Entry& one : entries) {
    if (one.scale == scale) return one;
  }
  return entries.front();
}

// Whether a person's text is `name`, but for spaces and signs of degrees Celsius.
bool is(std::string_view text, std::string_view name) {
  constexpr std::string_view passed_over = " \u00b0Cc";
  std::size_t next = 0;
  for (const char c : text) {
    if (passed_over.find(c) != std::string_view::npos) continue;
    if (next == name.size() || (c == 'f' ? 'F' : c) != name[next]) return false;
    ++next;
  }
  return next == name.size();
}

}  // namespace

GravityTemperatures temperatures(GravityScale scale) { return entry(scale).temperatures; }

std::string_view text(GravityScale scale) { return entry(scale).text; }

std::optional<GravityScale> gravity_scale(std::string_view text) {
  for (const Entry& one : entries) {
    if (is(text, one.text) || is(text, one.also)) return one.scale;
  }
  return std::nullopt;
}

}  // namespace tidewright::water
