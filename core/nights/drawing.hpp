// What every file asks that draws a night from a seed. Included by those only.
#pragma once

#include <chrono>
#include <vector>

#include "core/nights/fault.hpp"
#include "core/rehearsal/chance.hpp"

namespace tidewright::nights {

using rehearsal::Chance;

// Nothing befalls a room before it is at work.
inline constexpr Duration quiet_at_first = std::chrono::minutes{12};

inline double between(Chance& chance, double least, double most) {
  return least + (most - least) * chance.uniform();
}

inline Duration between(Chance& chance, Duration least, Duration most) {
  const double drawn =
      between(chance, static_cast<double>(least.count()), static_cast<double>(most.count()));
  return Duration{static_cast<Duration::rep>(drawn)};
}

template <class T>
const T& one_of(Chance& chance, const std::vector<T>& choice) {
  return choice[chance.bits() % choice.size()];
}

// Of a hundred.
inline bool happens(Chance& chance, double percent) { return chance.uniform() * 100 < percent; }

inline Fault draw_fault(Chance& chance, const FaultKind& kind, const room::Room& room,
                        Duration at) {
  return {.kind = &kind,
          .at = at,
          .lasting = between(chance, kind.shortest, kind.longest),
          .subject = one_of(chance, subjects(kind, room)),
          .amount = between(chance, kind.least, kind.most)};
}

inline void add(Night& night, const char* name, Duration at, std::uint8_t subject = no_subject,
                double amount = 0) {
  night.faults.push_back(
      {.kind = fault_kind_named(name), .at = at, .subject = subject, .amount = amount});
}

// What persons do and what happens to water, in draw_life.cpp: anything, in no good order; runs
// that somebody starts by name; trust in a room that has just got that fault; a leak about that
// time.
void draw_life(Night&, Chance&, const room::Room&);
void draw_runs(Night&, Chance&, const room::Room&);
void draw_trust(Night&, Chance&, const room::Room&, const Fault&);
void draw_leak(Night&, Chance&, Duration about);

}  // namespace tidewright::nights
