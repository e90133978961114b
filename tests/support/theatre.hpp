// The daemon without its shell: the real step() over a pretend room, in virtual time that jumps
// from one deadline to the next. Scenarios and month simulations play on it.
#pragma once

#include <array>
#include <deque>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/rehearsal/pretend_room.hpp"
#include "core/report/report.hpp"
#include "core/step.hpp"

namespace tidewright::support {

class Theatre {
 public:
  Theatre(room::Room room, const rehearsal::Settings&, std::uint64_t seed);

  // The daemon starts (with what the store kept, if it ran before) and finds its broker.
  void start(bool clean);
  // It starts and cannot read what the store kept.
  void start_without_records();
  void stop();   // on purpose: everything OFF, then silence
  void crash();  // silence
  void set_link(bool up);

  // Plays until `to`, or until `enough` says so after an event; returns whether it did.
  bool play(Instant to, const std::function<bool()>& enough = {});
  // Something happens now, besides what the pretend room says.
  void feed(const Event&);

  const room::Room& room() const { return room_; }
  const State& state() const { return state_; }
  rehearsal::PretendRoom& pretend() { return pretend_; }
  Instant now() const { return pretend_.now(); }
  Duration since_curtain() const { return now() - curtain_; }

  std::deque<report::Message> announced;  // oldest first; whoever has read one takes it away
  std::optional<Answer> answer;           // the latest
  std::size_t steps = 0;
  bool keeps_history = false;
  std::vector<Event> history;  // every event that step() saw
  bool disk_takes = true;
  WallClock wall;                                               // told to the daemon when it starts
  std::array<std::uint8_t, room::actuators_max> broker_says{};  // to each actuator's command

 private:
  void carry_out(const Effect&);
  void start(Started);

  room::Room room_;
  rehearsal::PretendRoom pretend_;
  State state_;
  Effects effects_;
  std::deque<Event> pending_;  // what the broker and the disk answer
  std::array<bool, room::instruments_max> online_{};
  Instant curtain_;
  Instant wake_ = never;
  Instant silent_since_;
  bool alive_ = false;
  bool ran_before_ = false;
  bool link_ = false;
};

// A summer morning; a whole day's hour 0 as the room counts.
inline constexpr Instant curtain{std::chrono::hours{24 * 20'000}};

}  // namespace tidewright::support
