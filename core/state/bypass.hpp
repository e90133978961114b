// Causes that a person has taken out of the interlock for a while. Written by interlock/bypass
// only; all of them end at a restart.
#pragma once

#include <array>

#include "core/base/instant.hpp"
#include "core/event.hpp"
#include "core/room/cause.hpp"
#include "core/state/latch.hpp"

namespace tidewright::state {

struct Bypass {
  room::CauseId cause{};
  Instant since = long_ago;
  Instant until = long_ago;  // not after now: it is over, or there never was one
  Name who;
  Remark why;
};

struct Bypasses {
  std::array<Bypass, 4> items{};
  Bypass asked;  // waits for its confirmation
  Armed armed;
  Instant passed = long_ago;  // the latest pass of the interlock
};

// Whether anything is bypassed now.
constexpr bool any(const Bypasses& bypasses, Instant now) {
  for (const Bypass& bypass : bypasses.items) {
    if (now < bypass.until) return true;
  }
  return false;
}

// The bypass of that cause that stands now, or null.
constexpr const Bypass* find(const Bypasses& bypasses, room::CauseId cause, Instant now) {
  for (const Bypass& bypass : bypasses.items) {
    if (bypass.cause == cause && now < bypass.until) return &bypass;
  }
  return nullptr;
}

// Whether a bypass of that cause has come to its end since the latest pass.
constexpr bool ends(const Bypasses& bypasses, room::CauseId cause, Instant now) {
  for (const Bypass& bypass : bypasses.items) {
    if (bypass.cause != cause || bypass.until == long_ago) continue;
    if (bypasses.passed <= bypass.until && bypass.until <= now) return true;
  }
  return false;
}

}  // namespace tidewright::state
