// A night: one household's room, its habits, and what befalls it, as plain data. Drawn from a seed,
// printed as text of one line each, kept as a file, shrunk, and lived through by run.hpp.
#pragma once

#include <chrono>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/instant.hpp"
#include "core/rehearsal/settings.hpp"
#include "core/room/room.hpp"

namespace tidewright::nights {

struct FaultKind;

// One thing that befalls the room, the broker, the daemon or its disk; or that a person does.
struct Fault {
  const FaultKind* kind = nullptr;
  Duration at{0};                     // after the night's begin
  Duration lasting{0};                // 0: it happens and is over
  std::uint8_t subject = no_subject;  // instrument, actuator or alarm, as its kind says
  double amount = 0;                  // in its kind's unit
};

// What the pretend room and its people are like. Every field has its row in habits.cpp.
struct Habits {
  double begins_at_h = 8;      // hour of the day
  double season_swing_c = 0;   // of the water, above and below
  double vat_filled = 0.5;     // of the capacity, at the beginning
  double mixing_filled = 0.5;  // and of the mixing vat's
  double water_c = 14;
  double feed_ppm = 320;
  double membrane_condition = 1;
  double membrane_rejection = 0.97;
  double line_bar = 3;
  double boosted_bar = 6;
  double top_off_l_day = 5;
  double level_noise = 0.002;      // of the capacity
  double messages_lost = 0;        // share of what the instruments say
  double float_switch_at = 0.92;   // of the capacity
  double high_high_at = 0.985;     // of the capacity
  double obeys_after_s = 0.05;     // a plug, from message to relay
  double feedback_lags_s = 0.2;    // and from relay to word
  double feedback_every_s = 0;     // 0: only when it changes
  double broker_latency_s = 0.02;  // each way
  double disk_takes_s = 0.03;      // for a commit
  double instruments_retain = 0;   // 1: the broker keeps their last word
  double instruments_date = 0;     // 1: their words carry the source's own time
  double day_longest_h = 0;        // the file's on_per_day_longest; 0: as the file says
  double lease_of_nobody = 0;      // 1: nothing switches the plugs off when the daemon is silent
};

struct Night {
  std::string household;  // name of its file
  std::uint64_t seed = 0;
  Duration lasting{0};
  Habits habits{};
  std::vector<Fault> faults{};  // in order of `at`
  // A night in which water must be made again: from `calm_from` on nothing is wrong any more, and
  // by `fills_by` the vat must have been full since. 0: no such night.
  Duration calm_from{0}, fills_by{0};
};

// So long after `calm_from` whatever asked for water is being served.
inline constexpr Duration fills_begin_within = std::chrono::hours{3};

rehearsal::Settings settings_of(const Habits&);
// The household's room with the keys that the night sets otherwise.
room::Room room_of(const room::Room& household, const Habits&);

// One habit by name; the list is what text and draw go through.
struct HabitRow {
  std::string_view name;
  double Habits::*value;
  double least, most;  // what is drawn; wider than any default of ours
};
std::span<const HabitRow> habits();

}  // namespace tidewright::nights
