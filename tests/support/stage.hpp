// A room on which events happen by hand, for tests of single stages through the whole step.
#pragma once

#include <array>
#include <vector>

#include "core/step.hpp"
#include "tests/support/rooms.hpp"

namespace tidewright::support {

class Stage {
 public:
  explicit Stage(room::Room room = minimal_room());

  // Started cleanly, link up, every sensor live and good: dry floor, 60 L, product 0, 20 degrees.
  void begin();

  // Lets one event happen now.
  void happen(decltype(Event::what) what);
  void says(room::InstrumentIndex, double value, Arrival = Arrival::live);
  // Lets time pass, stepping at every deadline; periodic sensors keep saying their last value.
  void wait(Duration);
  // The same, but these say nothing.
  void wait_without(room::InstrumentIndex silent, Duration);

  // What came of the last call of happen, says or wait.
  std::vector<Command> commands;
  std::vector<Announcement> announcements;
  std::vector<Answer> answers;

  bool is_on(room::ActuatorIndex actuator = 0) const { return state.drives[actuator].on; }
  const state::Signal& signal(room::InstrumentIndex i) const { return state.signals[i]; }

  room::Room room;
  State state;
  Instant now{std::chrono::hours{24 * 365 * 50}};
  bool plug_obeys = true;      // feedback and power follow each command at once
  bool plug_has_timer = true;  // it goes off by itself when its lease is over
  double watts_when_on = 60;   // drawn by a plug that obeys

 private:
  void pass(const decltype(Event::what)& what);
  void follow_commands();
  void begin_lease(const Command&);
  void follow_timers();
  Instant next_timer() const;
  void follow(room::Quantity, room::ActuatorIndex, double value);
  void wait_for(Duration, int silent);
  void forget();

  std::size_t followed_ = 0;  // commands that the plug has obeyed
  Instant next_ = never;
  std::array<Instant, room::actuators_max> off_by_itself_{};
  std::vector<double> said_;
  std::vector<Instant> due_;
};

}  // namespace tidewright::support
