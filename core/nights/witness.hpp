// What somebody outside the daemon knows: what was delivered to it, what it has sent, what the room
// is really like. All memory that the invariants need; it repeats none of step's judgements.
#pragma once

#include <array>
#include <optional>

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/nights/night.hpp"
#include "core/rehearsal/pretend_room.hpp"
#include "core/room/cause.hpp"
#include "core/state/state.hpp"

namespace tidewright::nights {

// What the daemon was told by one instrument.
struct Heard {
  bool ever = false;
  double value = 0;            // last, at any age, that could be one
  double before = 0;           // the one before it, live ones only
  Instant live_at = long_ago;  // of the last live or freshly dated word; its source's time if dated
  bool live = false;           // one came since the start or the link's return
  int live_in_a_row = 0;       // of the same value
  int nonsense_in_a_row = 0;
  Instant same_since = long_ago;  // live words have said this value
  bool online = true;             // as its availability topic says
  Instant online_at = long_ago;   // when that topic last said so since the link's return
};

// What the daemon has ordered of one actuator.
struct Ordered {
  bool on = false;
  Instant since = long_ago;         // of the last change, or the OFF after a start
  Instant sent = long_ago;          // of the last command
  Duration on_for{0};               // ordered ON in all, while the daemon lived
  std::array<Instant, 8> starts{};  // newest first; a crash forgets what the disk has not taken
  std::array<Instant, 8> starts_kept{};
  int starts_in_all = 0;
};

struct Witness {
  explicit Witness(const room::Room& household) : room(&household) {}

  const room::Room* room;
  std::array<Heard, room::instruments_max> heard;
  std::array<Ordered, room::actuators_max> ordered;
  Instant now = long_ago, now_by_events = long_ago;
  bool linked = false;
  Instant started = long_ago, linked_at = long_ago;
  int crashes = 0;                // starts after an end without notice
  Instant deaf_since = long_ago;  // what was said since is lost
  bool clean_start = true;
  room::PerRule<bool> told_latched{};  // announced while latched, and not reset since
  bool armed = false;                  // a reset was asked for and answered with a token
  Instant armed_at = long_ago;
  Ask armed_by{};                        // with what
  std::optional<Ask> bypass_armed_by{};  // a bypass was, and waits for its confirmation
  Instant bypass_armed_at = long_ago;
  std::array<Instant, room::cause_count> bypassed_until{};  // as a person confirmed it
  Instant attended_until = never;  // a person's run of so many minutes, of the latest start
  std::array<Instant, room::actuators_max> run_until{};  // the same of one actuator by its name
  Instant attended_kept = never;                         // both, as the disk has them
  std::array<Instant, room::actuators_max> run_kept{};
  Ask asked{};  // the latest of a person

  // Of the truth, between events.
  bool wet = false;
  Instant wet_since = never;
  std::size_t wet_spells = 0;
  std::array<Instant, room::actuators_max> on_since;  // the relay really closed; never = open
  Instant bare_since = never;                         // the mixing vat's heater stands bare

  Duration wet_to_off{0};      // the longest that the floor was wet and a relay closed
  Instant full_at = long_ago;  // the vat was last full
  Instant low_since = never;   // and has been under START, beyond any gauge's doubt

  void see(const rehearsal::PretendRoom&);
  // Litres at which a fill ends in truth: STOP, or where the float switch hangs; 0 without either.
  double full_mark(const rehearsal::PretendRoom&) const;
  // The daemon gets an event, and then does something about it.
  void note(const Event&);
  void note(const Effect&);
  void note_kept();  // the disk has all of it
  void note_death();

  // A person has taken that cause out of the interlock, for so long.
  Instant bypass_end(room::CauseId cause) const {
    return bypassed_until[static_cast<std::size_t>(cause)];
  }
  bool bypassed(room::CauseId cause) const { return now < bypass_end(cause); }

  // The instrument's word may be relied upon: live, not overdue, not denied by its availability.
  bool fresh(room::InstrumentIndex) const;

 private:
  void note_bypass();
  void note_answer(const Answer&);
  void note_reading(const Reading&, const room::Instrument&);
  void begin_anew(bool after_start);
};

}  // namespace tidewright::nights
