// Lives through one night: the real step() over the pretend room, broker, plugs and disk, in
// virtual time that jumps from one deadline to the next; after each step every invariant is asked.
#pragma once

#include <functional>
#include <map>
#include <set>
#include <vector>

#include "core/nights/broker.hpp"
#include "core/nights/disk.hpp"
#include "core/nights/fault.hpp"
#include "core/nights/invariant.hpp"
#include "core/nights/listener.hpp"
#include "core/nights/witness.hpp"
#include "core/rehearsal/pretend_room.hpp"
#include "core/step.hpp"

namespace tidewright::nights {

// Who looks after the room: the daemon, or one who sees the truth, never errs, and stops while the
// floor is wet. What the latter makes is what was possible.
enum class Keeper : std::uint8_t { daemon, perfect };

// What the procedure was doing when a fault began.
enum class Phase : std::uint8_t { not_alive, no_demand, halted, waiting, filling };

// For the campaign's table: a fault, the phase in which it began, and what came within two hours of
// it and can latch (rule_count: nothing did).
struct Cell {
  const FaultKind* kind;
  Phase phase;
  std::size_t finding;
  friend auto operator<=>(const Cell&, const Cell&) = default;
};

// What came of a night.
struct Outcome {
  std::vector<Violation> violations;  // the first of each invariant
  Litres made;                        // for the vat
  Litres spilled;                     // on the floor, in all
  std::size_t steps = 0;
  std::size_t wet_spells = 0;
  std::size_t announced = 0;      // alarms raised
  std::size_t trips = 0;          // latches set
  bool filled_when_calm = false;  // the vat was full once all was calm
  Duration wet_to_off{0};         // the longest that the floor was wet and a relay closed
  std::map<Why, Duration> held;   // below STOP with a demand, and OFF: for how long, and why
  Duration dead{0};               // the same, because the daemon did not live
  std::set<Cell> cells;
};

class Run {
 public:
  // `household` and `night` must outlive it.
  Run(const room::Room& household, const Night& night, Keeper = Keeper::daemon);
  Outcome live();

  // For faults/: what they may do.
  rehearsal::PretendRoom& pretend() { return pretend_; }
  Broker& broker() { return broker_; }
  Disk& disk() { return disk_; }
  const room::Room& room() const { return room_; }
  const State& state() const { return state_; }
  Instant now() const { return pretend_.now(); }
  void later(Duration, std::function<void(Run&)>);
  // Tells the daemon something, if it lives.
  void feed(const decltype(Event::what)&);
  void try_instruments();
  void start(bool clean);
  void stop();  // on purpose
  void crash();
  bool is_alive() const { return alive_; }
  void pause() { paused_ = true; }
  void resume() { paused_ = false; }
  void drop_link();
  void restore_link();
  // The daemon dies in the next step that has more effects than this, after so many of them.
  void die_after(std::size_t effects, Duration down_for);
  std::optional<Answer> answer;  // the daemon's latest to a person
  Listener* listener = nullptr;  // may be set before live()
  WallClock wall;                // as the daemon's machine has it

 private:
  void plan();
  void tend();
  void account(Duration passed);
  Phase phase() const;
  void count_news();
  void count_cells();
  void run_due();
  bool deliver_one();
  Instant next_due() const;
  void step_once(const Event&);
  void carry_out(const Effect&);
  Moment moment() const { return {room_, night_, begin_, pretend_, witness_}; }
  void judge_moment();
  void judge_report();
  void judge_night();
  void judge_step(const Witness& before, const Event&);
  bool is_known(const Invariant&) const;
  void complain(const Invariant&, const Complaint&);
  void answer_persist();
  void die_in_step();

  const Night& night_;
  const Keeper keeper_;
  room::Room room_;
  Instant begin_;
  rehearsal::PretendRoom pretend_;
  Broker broker_;
  Disk disk_;
  Witness witness_;
  std::multimap<Instant, std::function<void(Run&)>> acts_;
  State state_, state_before_;
  Effects effects_;
  Instant wake_ = never;
  Instant died_ = long_ago;
  bool ended_clean_ = true;  // the disk took the end as well
  bool fills_ = false;       // the perfect keeper does
  bool alive_ = false, paused_ = false, ran_before_ = false;
  bool broker_is_up_ = true, recording_ = true;
  std::optional<std::size_t> dies_after_;
  Duration down_for_{0};
  std::vector<room::RuleId> held_;  // announced once the disk has answered
  bool keeps_journal_;
  Journal journal_;
  Instant report_due_;
  std::vector<std::pair<Instant, room::RuleId>> found_;
  std::vector<std::pair<const Fault*, Phase>> began_;
  Outcome outcome_;
};

}  // namespace tidewright::nights
