// Everything that can happen to the room, with the instant at which it happened.
// The daemon makes events, step() consumes them, the journal keeps them. No pointers, no heap.
#pragma once

#include <cstdint>
#include <variant>

#include "core/base/bounded.hpp"
#include "core/base/instant.hpp"
#include "core/base/reason.hpp"
#include "core/room/cause.hpp"
#include "core/room/room.hpp"

namespace tidewright {

// How a message reached us, and so what it may prove.
enum class Arrival : std::uint8_t {
  live,      // published while we listened
  retained,  // kept by the broker, or within 2 s of subscribing: of unknown age
  dated,     // retained, but with the source's own time; `taken` says when
};

// One measurement, in the quantity's own unit.
struct Reading {
  room::InstrumentIndex instrument = 0;
  double value = 0;
  Arrival arrival = Arrival::live;
  Instant taken = long_ago;  // source time, when the payload carries one; else long_ago
};

// A message of an instrument that holds no measurement: garbage, or the instrument says so itself.
struct Refusal {
  room::InstrumentIndex instrument = 0;
};

// An instrument's own availability topic.
struct Availability {
  room::InstrumentIndex instrument = 0;
  bool online = false;
};

// The safety line to the broker is up (subscribed) or down.
struct Link {
  bool up = false;
};

// What the broker said of a command: >= 128 refused, 16 nobody listens, 0 taken.
struct Delivery {
  room::ActuatorIndex actuator = 0;
  bool on = false;
  std::uint8_t code = 0;
};

// The first event after a start. `clean`: the last run ended on purpose and its state was read.
struct Started {
  bool clean = false;
  Duration away{0};      // since the last record of the run before
  bool readable = true;  // false: what stood latched is not known, so it counts as latched
};

struct ClockSet {
  WallClock wall;
};

// Whether the disk took the last record.
struct Recorded {
  bool ok = true;
};

// Time has come (a deadline that step asked for).
struct Tick {};

// The daemon is going down: everything OFF.
struct Stopping {};

using Name = ShortText<31>;
using Remark = ShortText<95>;

enum class AskKind : std::uint8_t {
  acknowledge,
  shelve,
  unshelve,
  reset,    // answered with a token
  confirm,  // with that token
  start,
  stop,
  test,            // one announcement by every path
  bypass,          // answered with a token
  confirm_bypass,  // with that token
  end_bypass,
  test_lease,
};

// A person's request. `ticket` comes back in the Answer.
struct Ask {
  AskKind kind{};
  std::uint32_t ticket = 0;
  room::RuleId alarm{};                       // acknowledge, shelve, unshelve, reset, confirm
  room::CauseId cause{};                      // bypass, confirm_bypass, end_bypass
  std::uint32_t occurrence = 0;               // acknowledge; 0 = the current one
  room::ActuatorIndex actuator = no_subject;  // start, stop, test_lease; no_subject = make_water
  Duration lasting{0};                        // start (0 = to STOP), shelve, bypass (0 = usual)
  std::uint32_t token = 0;  // confirmations: as told; reset, bypass: a fresh one by the daemon
  Name who{};
  Remark why{};  // shelve, bypass, in the person's words: for the journal and the log
};

enum class TellKind : std::uint8_t { measured, rotated, replaced, tested, cleaned, stocked };

// A person's fact. `ticket` comes back in the Answer.
struct Tell {
  TellKind kind{};
  std::uint32_t ticket = 0;
  room::InstrumentIndex instrument = no_subject;  // measured, tested
  double value = 0;                               // measured; stocked: what there is now
  Name who{};
  room::SupplyIndex supply = no_subject;  // stocked
};

struct Event {
  Instant at = long_ago;
  std::variant<Tick, Reading, Refusal, Availability, Link, Delivery, Started, ClockSet, Recorded,
               Stopping, Ask, Tell>
      what;
};

}  // namespace tidewright
