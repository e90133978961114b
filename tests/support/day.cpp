#include "tests/support/day.hpp"

#include <stdexcept>
#include <string>

#include "core/rehearsal/happening.hpp"
#include "tests/support/theatre.hpp"

namespace tidewright::support {
namespace {

using namespace std::chrono_literals;

void ask(Theatre& theatre, AskKind kind, room::RuleId alarm) {
  Ask ask;
  ask.kind = kind;
  ask.alarm = alarm;
  ask.token = 123456;
  ask.who = Name("ann");
  theatre.feed({theatre.now(), ask});
}

void reset(Theatre& theatre, room::RuleId alarm) {
  ask(theatre, AskKind::acknowledge, alarm);
  ask(theatre, AskKind::reset, alarm);
  ask(theatre, AskKind::confirm, alarm);
  ask(theatre, AskKind::start, alarm);
}

void let(Theatre& theatre, const std::string& line) {
  if (!rehearsal::happen(theatre.pretend(), theatre.room(), line)) {
    throw std::runtime_error("nobody understands: " + line);
  }
}

// What is wrong for an hour, and is then put right.
void bad_hour(Theatre& theatre, const std::string& wrong, const std::string& right) {
  let(theatre, wrong);
  theatre.play(theatre.now() + 1h);
  let(theatre, right);
  theatre.play(theatre.now() + 30min);
}

}  // namespace

std::vector<Event> eventful_day(const room::Room& room) {
  rehearsal::Settings settings;
  settings.works.begins_filled = 0.3;
  Theatre theatre(room, settings, 1);
  theatre.keeps_history = true;
  theatre.start(true);
  theatre.play(theatre.now() + 2h);
  bad_hour(theatre, "spill 1 l", "dry the floor");
  reset(theatre, room::RuleId::leak);
  bad_hour(theatre, "level falls silent", "level works again");
  bad_hour(theatre, "floor talks garbage", "floor works again");
  bad_hour(theatre, "spend the resin", "replace the resin");
  theatre.feed({theatre.now(), Tell{TellKind::replaced, 1, no_subject, 0, Name("ann")}});
  bad_hour(theatre, "break the pump", "mend the pump");
  theatre.set_link(false);
  theatre.play(theatre.now() + 10min);
  theatre.set_link(true);
  let(theatre, "booster ignores off");
  ask(theatre, AskKind::stop, room::RuleId::leak);
  theatre.play(theatre.now() + 1h);
  let(theatre, "booster obeys again");
  let(theatre, "press booster");
  reset(theatre, room::RuleId::actuator_disobeys);
  theatre.play(theatre.now() + 6h);
  theatre.crash();
  theatre.play(theatre.now() + 10min);
  theatre.start(false);
  theatre.play(theatre.now() + 8h);
  theatre.stop();
  return theatre.history;
}

}  // namespace tidewright::support
