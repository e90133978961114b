// The kinds of fault, one row each: what it is called, what it touches, how it begins and ends.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "core/nights/night.hpp"

namespace tidewright::nights {

class Run;

// What a fault's subject is.
enum class Subject : std::uint8_t {
  none,
  leak_sensor,
  instrument,
  gauge,
  announced,  // an instrument of which a hub tells whether it is there
  actuator,
  run,  // an actuator that a person starts by its name
  alarm,
  cause,  // of those that the interlock knows
};

// What a fault excuses, for the checkers to reckon with, and nothing else does.
enum class Excuse : std::uint8_t {
  nothing,
  deceives,         // its subject may say what is not so, live: nobody can know
  keeps_on,         // its subject stays ON until it is told OFF: its own timer is no help
  welds,            // its subject stays ON whatever is sent, and its own timer is no help
  delays,           // words and commands arrive later, by `amount` seconds
  delays_a_minute,  // the same, by up to a minute
  pauses,           // the daemon hears old words as new ones for as long as the fault lasts
};

// What of the way from a wet floor to an open relay it takes away, while it lasts.
enum class Stops : std::uint8_t {
  nothing,
  words,       // those of a leak sensor do not arrive: its silence must count
  commands,    // OFF does not arrive, or nobody sends it: the lease must end
  both,        // one after the other
  one_sensor,  // that says "dry" itself; another must see it
  one_relay,   // nothing opens it
};

struct FaultKind {
  int number;  // in the list of fault classes of docs/reliability.md; 0 = no fault, but life
  std::string_view name;
  std::string_view sentence;
  Subject subject;
  Duration shortest, longest;  // of `lasting`; both 0 = momentary
  double least, most;          // of `amount`
  std::string_view unit;       // of `amount`; "" = none
  Excuse excuse;
  Stops stops;
  void (*begin)(Run&, const Fault&);
  void (*end)(Run&, const Fault&);  // null where it is momentary
};

// All rows, in the order of their numbers.
std::vector<const FaultKind*> fault_kinds();
const FaultKind* fault_kind_named(std::string_view name);

// Whether such a fault can befall this room at this subject.
bool fits(const FaultKind&, const room::Room&, std::uint8_t subject);
// The subjects of this room that it fits; { no_subject } where it needs none.
std::vector<std::uint8_t> subjects(const FaultKind&, const room::Room&);

// The rows of each file in faults/.
std::span<const FaultKind> faults_of_broker();
std::span<const FaultKind> faults_of_messages();
std::span<const FaultKind> faults_of_instruments();
std::span<const FaultKind> faults_of_plugs();
std::span<const FaultKind> faults_of_process();
std::span<const FaultKind> faults_of_water();
std::span<const FaultKind> acts_of_persons();

}  // namespace tidewright::nights
