// The one latch per rule. Set by the interlock, cleared only by a person's confirmed reset.
#pragma once

#include <array>
#include <cstdint>

#include "core/base/instant.hpp"
#include "core/base/reason.hpp"
#include "core/room/cause.hpp"
#include "core/room/role.hpp"
#include "core/room/rule.hpp"

namespace tidewright::state {

// A latch of which no more is known than that it is set holds everything.
inline constexpr std::uint8_t every_role = 0xff;

struct Latch {
  bool set = false;
  bool first = false;  // the first cause of the standing trips
  Instant since = long_ago;
  Reason cause;                     // as it was when it tripped
  bool stands = false;              // its cause stood in the step before
  std::array<Instant, 5> stops{};   // when its cause stopped a running actuator, newest first
  std::uint8_t roles = every_role;  // a bit for each room::Role that it holds
};

// A reset or bypass that was asked for and waits for its token.
struct Armed {
  bool armed = false;
  room::RuleId alarm{};
  room::CauseId cause{};  // of a bypass
  std::uint32_t token = 0;
  Instant at = long_ago;
  std::uint8_t wrong_tries = 0;
};

constexpr std::uint8_t bit(room::Role role) {
  return static_cast<std::uint8_t>(1U << static_cast<unsigned>(role));
}
static_assert(room::role_count <= 8);

// Whether the latch keeps that role off.
constexpr bool holds(const Latch& latch, room::Role role) {
  return latch.set && (latch.roles & bit(role)) != 0;
}

using Latches = room::PerRule<Latch>;

}  // namespace tidewright::state
