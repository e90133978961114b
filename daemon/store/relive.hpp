// Lives the journal's lines through step() again, from the first chapter on.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/room/room.hpp"
#include "core/state/state.hpp"

namespace tidewright::store {

// One event as it was lived through again. The references last for the call.
struct Moment {
  const room::Room& room;
  const State& state;  // as step left it
  const Event& event;
  std::string_view raw;
  const Effects& effects;
  Instant next;  // when step asked to be called again
};

struct Relived {
  std::uint64_t events = 0;
  std::uint64_t chapters = 0;         // that opened in the midst of a run, and were reached
  std::uint64_t chapters_agreed = 0;  // where the state was, byte for byte, what was recorded
  std::uint64_t missing = 0;          // events that the journal does not have
  std::uint64_t passed_over = 0;      // before the first chapter, after a gap, or unreadable
};

class Relive {
 public:
  // `room`: the household to live by; none: the one of each chapter.
  Relive(std::optional<room::Room> room, std::function<void(const Moment&)> see,
         std::function<void(const std::string&)> complain);

  void line(std::string_view text);
  const Relived& result() const { return result_; }
  const State& state() const { return state_; }
  std::uint64_t sequence() const { return sequence_; }  // of the last event
  const room::Room& room() const { return room_; }

 private:
  void begin_chapter(const std::string& household);
  void meet_state(std::uint64_t sequence, const std::string& text, bool fresh);
  void live(std::uint64_t sequence, const Event& event, const std::string& raw);

  bool room_is_given_;
  bool room_known_;
  room::Room room_;
  std::function<void(const Moment&)> see_;
  std::function<void(const std::string&)> complain_;
  State state_;
  Effects effects_;
  bool state_known_ = false;
  std::uint64_t sequence_ = 0;  // of the last event
  Relived result_;
};

}  // namespace tidewright::store
