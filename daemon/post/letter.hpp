// One announcement on one way to people.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace tidewright::post {

enum class Way : std::uint8_t { webhook, mail };
inline constexpr std::array ways{Way::webhook, Way::mail};
constexpr std::string_view name(Way way) { return way == Way::webhook ? "webhook" : "mail"; }
// The way of that name; none if there is no such way.
constexpr std::optional<Way> way_named(std::string_view word) {
  for (const Way way : ways) {
    if (name(way) == word) return way;
  }
  return std::nullopt;
}

struct Letter {
  std::string notice;  // the same whenever it is sent again: a receiver drops what it knows
  Way way{};
  std::string body;  // the announcement, as JSON
  friend bool operator==(const Letter&, const Letter&) = default;
};

// What became of one. `refused`: the receiver does not want this letter, whenever it comes;
// `failed`: the way is not open.
enum class Fate : std::uint8_t { delivered, refused, failed };

struct Outcome {
  std::string notice;
  Way way{};
  Fate fate{};
  std::string said;  // by the receiver, or what is wrong; for people
  friend bool operator==(const Outcome&, const Outcome&) = default;
};

}  // namespace tidewright::post
