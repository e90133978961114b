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

constexpr std::uint32_t token = 4711;

Ask by_ann(AskKind kind, Duration lasting = Duration{0}) {
  Ask asked;
  asked.kind = kind;
  asked.lasting = lasting;
  asked.who = Name("ann");
  return asked;
}

// Of one actuator, by its name.
void ask_of(Run& run, AskKind kind, const Fault& fault, Duration lasting = Duration{0}) {
  Ask asked = by_ann(kind, lasting);
  asked.actuator = fault.subject;
  run.feed(asked);
}

void ask_about(Run& run, AskKind kind, const Fault& fault, Duration lasting = Duration{0}) {
  Ask asked = by_ann(kind, lasting);
  asked.alarm = static_cast<room::RuleId>(fault.subject);
  run.feed(asked);
}

// Asks, and confirms with the token of the answer.
void ask_twice(Run& run, Ask asked, AskKind confirm, Duration after, bool right_token) {
  asked.token = token;
  run.feed(asked);
  asked.kind = confirm;
  asked.token = right_token ? token : token + 1;
  run.later(after, [asked](Run& later) { later.feed(asked); });
}

void reset(Run& run, const Fault& fault, Duration confirmed_after, bool right_token) {
  Ask asked = by_ann(AskKind::reset);
  asked.alarm = static_cast<room::RuleId>(fault.subject);
  ask_twice(run, asked, AskKind::confirm, confirmed_after, right_token);
}

void bypass(Run& run, const Fault& fault, bool right_token) {
  Ask asked = by_ann(AskKind::bypass, of_minutes(fault.amount));
  asked.cause = static_cast<room::CauseId>(fault.subject);
  ask_twice(run, asked, AskKind::confirm_bypass, 3s, right_token);
}

void end_bypass(Run& run, const Fault& fault) {
  Ask asked = by_ann(AskKind::end_bypass);
  asked.cause = static_cast<room::CauseId>(fault.subject);
  run.feed(asked);
}

constexpr std::array rows{
    FaultKind{0, "asks_start", "somebody starts a fill", Subject::none, 0s, 0s, 0, 200,
              "min (under 30: to STOP)", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) {
                run.feed(by_ann(AskKind::start, of_minutes(fault.amount < 30 ? 0 : fault.amount)));
              },
              nullptr},
    FaultKind{0, "asks_stop", "somebody stops the fill", Subject::none, 0s, 0s, 1, 120, "min",
              Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) {
                run.feed(by_ann(AskKind::stop, of_minutes(fault.amount)));
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
              [](Run& run, const Fault& fault) { ask_of(run, AskKind::stop, fault); }, nullptr},
    FaultKind{0, "resets", "somebody resets an alarm as it should be done", Subject::alarm, 0s, 0s,
              0, 0, "", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) { reset(run, fault, 3s, true); }, nullptr},
    FaultKind{0, "resets_too_late", "somebody confirms a reset after its time", Subject::alarm, 0s,
              0s, 0, 0, "", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) { reset(run, fault, 45s, true); }, nullptr},
    FaultKind{0, "resets_with_wrong_token", "somebody guesses a reset's token", Subject::alarm, 0s,
              0s, 0, 0, "", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) { reset(run, fault, 3s, false); }, nullptr},
    FaultKind{0, "acknowledges", "somebody acknowledges an alarm", Subject::alarm, 0s, 0s, 0, 0, "",
              Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) { ask_about(run, AskKind::acknowledge, fault); },
              nullptr},
    FaultKind{0, "shelves", "somebody shelves an alarm", Subject::alarm, 0s, 0s, 5, 120, "min",
              Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) {
                ask_about(run, AskKind::shelve, fault, of_minutes(fault.amount));
              },
              nullptr},
    FaultKind{0, "tests_lease", "somebody tests an actuator's lease", Subject::actuator, 0s, 0s, 0,
              0, "", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) { ask_of(run, AskKind::test_lease, fault); },
              nullptr},
    FaultKind{0, "bypasses", "somebody takes a cause out of the interlock", Subject::cause, 0s, 0s,
              0, 90, "min", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) { bypass(run, fault, true); }, nullptr},
    FaultKind{0, "bypasses_with_wrong_token", "somebody guesses a bypass's token", Subject::cause,
              0s, 0s, 0, 90, "min", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) { bypass(run, fault, false); }, nullptr},
    FaultKind{0, "ends_bypass", "somebody ends a bypass before its time", Subject::cause, 0s, 0s, 0,
              0, "", Excuse::nothing, Stops::nothing, end_bypass, nullptr},
    FaultKind{0, "tries_instruments", "somebody makes each instrument speak that speaks on change",
              Subject::none, 0s, 0s, 0, 0, "", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault&) { run.try_instruments(); }, nullptr},
};

}  // namespace

std::span<const FaultKind> acts_of_persons() { return rows; }

}  // namespace tidewright::nights
