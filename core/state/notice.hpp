// The last announcements, numbered for ever. They are on the disk before anybody is told, so that
// whoever delivers them takes up after a crash where it was.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

#include "core/base/instant.hpp"
#include "core/base/reason.hpp"
#include "core/effect.hpp"
#include "core/room/rule.hpp"

namespace tidewright::state {

struct Notice {
  std::uint32_t number = 0;  // 0: none
  Instant at = long_ago;
  room::RuleId alarm{};
  std::uint32_t occurrence = 0;
  Announced event{};
  Reason why;
};

// More than any one step announces in a home; what waits longer is the deliverer's to remember.
inline constexpr std::size_t notices_kept = 16;

struct Notices {
  std::uint32_t last = 0;                    // the newest number
  std::array<Notice, notices_kept> items{};  // number n is at n % notices_kept
};

}  // namespace tidewright::state
