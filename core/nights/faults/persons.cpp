// What a person asks of the daemon, rightly or not.
#include <array>
#include <chrono>

#include "core/nights/fault.hpp"
#include "core/nights/run.hpp"

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;

Duration of_minutes(double minutes) {
  return Duration{static_cast<Duration::rep>(minutes * 60'000)};
}

// Of one actuator, by its name.
void ask_of(Run& run, AskKind kind, const Fault& fault, Duration lasting) {
  Ask asked;
  asked.kind = kind;
  asked.actuator = fault.subject;
  asked.lasting = lasting;
  asked.who = Name("ann");
  run.feed(asked);
}

void ask(Run& run, AskKind kind, std::uint8_t alarm, Duration lasting, std::uint32_t token = 0) {
  Ask asked;
  asked.kind = kind;
  if (alarm < room::rule_count) asked.alarm = static_cast<room::RuleId>(alarm);
  asked.lasting = lasting;
  asked.token = token;
  asked.who = Name("ann");
  run.feed(asked);
}

// Asks, and confirms with the token of the answer.
void reset(Run& run, std::uint8_t alarm, Duration confirmed_after, bool right_token) {
  constexpr std::uint32_t token = 4711;
  ask(run, AskKind::reset, alarm, Duration{0}, token);
  run.later(confirmed_after, [=](Run& later) {
    ask(later, AskKind::confirm, alarm, Duration{0}, right_token ? token : token + 1);
  });
}

constexpr std::array rows{
    FaultKind{0, "asks_start", "somebody starts a fill", Subject::none, 0s, 0s, 0, 200,
              "min (under 30: to STOP)", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) {
                ask(run, AskKind::start, no_subject,
                    of_minutes(fault.amount < 30 ? 0 : fault.amount));
              },
              nullptr},
    FaultKind{0, "asks_stop", "somebody stops the fill", Subject::none, 0s, 0s, 1, 120, "min",
              Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) {
                ask(run, AskKind::stop, no_subject, of_minutes(fault.amount));
              },
              nullptr},
    FaultKind{0, "starts_run", "somebody starts a run of one actuator", Subject::run, 0s, 0s, 1,
              240, "min", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) {
                ask_of(run, AskKind::start, fault, of_minutes(fault.amount));
              },
              nullptr},
    FaultKind{0, "stops_run", "somebody stops such a run", Subject::run, 0s, 0s, 0, 0, "",
              Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) { ask_of(run, AskKind::stop, fault, Duration{0}); },
              nullptr},
    FaultKind{0, "resets", "somebody resets an alarm as it should be done", Subject::alarm, 0s, 0s,
              0, 0, "", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) { reset(run, fault.subject, 3s, true); }, nullptr},
    FaultKind{0, "resets_too_late", "somebody confirms a reset after its time", Subject::alarm, 0s,
              0s, 0, 0, "", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) { reset(run, fault.subject, 45s, true); }, nullptr},
    FaultKind{0, "resets_with_wrong_token", "somebody guesses a reset's token", Subject::alarm, 0s,
              0s, 0, 0, "", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) { reset(run, fault.subject, 3s, false); }, nullptr},
    FaultKind{0, "acknowledges", "somebody acknowledges an alarm", Subject::alarm, 0s, 0s, 0, 0, "",
              Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) {
                ask(run, AskKind::acknowledge, fault.subject, Duration{0});
              },
              nullptr},
    FaultKind{0, "shelves", "somebody shelves an alarm", Subject::alarm, 0s, 0s, 5, 120, "min",
              Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) {
                ask(run, AskKind::shelve, fault.subject, of_minutes(fault.amount));
              },
              nullptr},
    FaultKind{0, "tries_instruments", "somebody makes each instrument speak that speaks on change",
              Subject::none, 0s, 0s, 0, 0, "", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault&) { run.try_instruments(); }, nullptr},
};

}  // namespace

std::span<const FaultKind> acts_of_persons() { return rows; }

}  // namespace tidewright::nights
