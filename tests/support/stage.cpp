#include "tests/support/stage.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/rules/catalogue.hpp"

namespace tidewright::support {
namespace {

constexpr double silent = std::numeric_limits<double>::quiet_NaN();

double at_first(const room::Instrument& instrument) {
  switch (instrument.quantity) {
    case room::Quantity::level:
      return 60;
    case room::Quantity::temperature:
      return 20;
    case room::Quantity::dissolved_solids:
      return instrument.place == room::Place::feed ? 300 : 0;
    default:
      return 0;
  }
}

}  // namespace

Stage::Stage(room::Room made) : room(std::move(made)) {
  room.rules = rules::default_settings();
  said_.assign(room.instruments.size(), silent);
  due_.assign(room.instruments.size(), never);
  off_by_itself_.fill(never);
}

void Stage::begin() {
  happen(Started{.clean = true});
  happen(Link{.up = true});
  for (std::size_t i = 0; i < room.instruments.size(); ++i) {
    says(static_cast<room::InstrumentIndex>(i), at_first(room.instruments[i]));
  }
}

void Stage::forget() {
  commands.clear();
  followed_ = 0;
  announcements.clear();
  answers.clear();
}

void Stage::pass(const decltype(Event::what)& what) {
  Effects effects;
  next_ = step(room, state, {now, what}, effects);
  for (const Effect& effect : effects) {
    if (const auto* command = std::get_if<Command>(&effect)) commands.push_back(*command);
    if (const auto* said = std::get_if<Announcement>(&effect)) announcements.push_back(*said);
    if (const auto* answer = std::get_if<Answer>(&effect)) answers.push_back(*answer);
  }
}

void Stage::follow(room::Quantity quantity, room::ActuatorIndex actuator, double value) {
  const auto i = room::find(room, quantity, actuator);
  if (!i || said_[*i] == value) return;
  said_[*i] = value;
  pass(Reading{.instrument = *i, .value = value});
}

void Stage::follow_commands() {
  if (!plug_obeys) return;
  while (followed_ < commands.size()) {
    const Command command = commands[followed_++];
    begin_lease(command);
    follow(room::Quantity::feedback, command.actuator, command.on ? 1 : 0);
    follow(room::Quantity::power, command.actuator, command.on ? watts_when_on : 0);
  }
}

// As the plug's own timer does.
void Stage::begin_lease(const Command& command) {
  const room::Actuator& actuator = room.actuators[command.actuator];
  Instant& end = off_by_itself_[command.actuator];
  const bool fixed = actuator.lease_kind == room::LeaseKind::plug_fixed;
  if (!command.on) {
    end = never;
  } else if (actuator.lease_kind != room::LeaseKind::none && (!fixed || end == never)) {
    end = now + actuator.lease;
  }
}

void Stage::follow_timers() {
  if (!plug_has_timer) return;
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    if (now < off_by_itself_[i]) continue;
    off_by_itself_[i] = never;
    follow(room::Quantity::feedback, static_cast<room::ActuatorIndex>(i), 0);
    follow(room::Quantity::power, static_cast<room::ActuatorIndex>(i), 0);
    follow_commands();
  }
}

Instant Stage::next_timer() const {
  if (!plug_has_timer) return never;
  return *std::min_element(off_by_itself_.begin(), off_by_itself_.end());
}

void Stage::happen(decltype(Event::what) what) {
  forget();
  pass(what);
  follow_commands();
}

void Stage::says(room::InstrumentIndex i, double value, Arrival arrival) {
  if (arrival == Arrival::live) {
    said_[i] = value;
    const bool periodic = !room.instruments[i].on_change;
    due_[i] = periodic ? now + room.instruments[i].reports_every : never;
  }
  happen(Reading{.instrument = i, .value = value, .arrival = arrival});
}

void Stage::wait(Duration length) { wait_for(length, -1); }

void Stage::wait_without(room::InstrumentIndex i, Duration length) { wait_for(length, i); }

void Stage::wait_for(Duration length, int silent_one) {
  forget();
  const Instant end = now + length;
  while (true) {
    int speaker = -1;
    Instant due = std::min({next_, next_timer(), end});
    for (std::size_t i = 0; i < due_.size(); ++i) {
      if (static_cast<int>(i) == silent_one || due_[i] > due) continue;
      due = due_[i];
      speaker = static_cast<int>(i);
    }
    if (speaker < 0 && due >= end) break;
    now = std::max(now, due);
    follow_timers();
    if (speaker < 0) {
      pass(Tick{});
    } else {
      const auto i = static_cast<std::size_t>(speaker);
      due_[i] = now + room.instruments[i].reports_every;
      pass(Reading{.instrument = static_cast<room::InstrumentIndex>(i), .value = said_[i]});
    }
    follow_commands();
  }
  now = end;
  pass(Tick{});
  follow_commands();
}

}  // namespace tidewright::support
