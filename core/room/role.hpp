// What a switched thing is for. A room has at most one of each.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "core/base/instant.hpp"

namespace tidewright::room {

enum class Role : std::uint8_t {
  booster_pump,
  feed_valve,
  fill_valve,     // between the purifier and its vat
  transfer_pump,  // from that vat to the mixing vat
  mixing_pump,    // in the mixing vat, as the heater
  heater,
  divert_valve,  // ON: the product runs to the drain, not into the vat
  flush_valve,   // ON: the membrane is rinsed to the drain
};
inline constexpr std::size_t role_count = 8;

struct RoleFacts {
  std::string_view words;  // as the household's file has it: "booster pump"
  std::string_view name;   // "booster_pump"
  bool moves_water;        // water could run out of what it moves or lets through
  bool makes_water;        // goes with the fill: make_water wants it, and nothing else does
  Duration lease;          // where the file gives none; half a minute at line rate
};

inline constexpr std::array<RoleFacts, role_count> role_facts{{
    {"booster pump", "booster_pump", true, true, Duration{120'000}},
    {"feed valve", "feed_valve", true, true, Duration{30'000}},
    {"fill valve", "fill_valve", true, true, Duration{30'000}},
    {"transfer pump", "transfer_pump", true, false, Duration{120'000}},
    {"mixing pump", "mixing_pump", false, false, Duration{120'000}},
    {"heater", "heater", false, false, Duration{120'000}},
    {"divert valve", "divert_valve", true, false, Duration{120'000}},
    {"flush valve", "flush_valve", true, false, Duration{30'000}},
}};

constexpr const RoleFacts& facts(Role role) { return role_facts[static_cast<std::size_t>(role)]; }

template <class T>
struct PerRole {
  std::array<T, role_count> items{};
  constexpr T& operator[](Role role) { return items[static_cast<std::size_t>(role)]; }
  constexpr const T& operator[](Role role) const { return items[static_cast<std::size_t>(role)]; }
};

}  // namespace tidewright::room
