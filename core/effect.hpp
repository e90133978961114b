// What step() wants done, as plain data. The daemon carries effects out in their order.
#pragma once

#include <cstdint>
#include <variant>

#include "core/base/bounded.hpp"
#include "core/base/instant.hpp"
#include "core/base/reason.hpp"
#include "core/room/room.hpp"

namespace tidewright {

// Publish to an actuator, at once, never retained.
struct Command {
  room::ActuatorIndex actuator = 0;
  bool on = false;
  Duration life{0};  // message expiry; what is older must not be obeyed
  friend bool operator==(const Command&, const Command&) = default;
};

// Write what must survive (state.hpp: Kept) before the announcements that follow in this pass
// are published. Commands never wait for it.
struct Persist {
  friend bool operator==(const Persist&, const Persist&) = default;
};

// A summary stands for many alarms; it names the first of them. A digest is about no single one.
enum class Announced : std::uint8_t { raised, reminder, cleared, test, summary, digest };

// Tell the household. Words are made by report/.
struct Announcement {
  room::RuleId alarm{};
  std::uint32_t occurrence = 0;
  Announced event{};
  Reason why{};
  friend bool operator==(const Announcement&, const Announcement&) = default;
};

// The reply to an Ask or Tell: done, or refused and why.
struct Answer {
  std::uint32_t ticket = 0;
  bool done = false;
  Reason why{};
  friend bool operator==(const Answer&, const Answer&) = default;
};

using Effect = std::variant<Command, Persist, Announcement, Answer>;
using Effects = Bounded<Effect, 96>;

}  // namespace tidewright
