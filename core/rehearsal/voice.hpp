// How one instrument speaks: when, how coarsely, and what can go wrong with it.
#pragma once

#include <optional>

#include "core/rehearsal/chance.hpp"
#include "core/room/instrument.hpp"

namespace tidewright::rehearsal {

struct VoiceSettings {
  double noise = 0;           // standard deviation, in the instrument's unit
  double relative_noise = 0;  // of the value
  double step = 0;            // of the display; 0 = exact
  double lost = 0;            // share of the messages that never arrive
};

struct VoiceFaults {
  bool silent = false;         // battery empty, radio gone
  bool stuck = false;          // says the same value for ever
  bool garbage = false;        // speaks, but not in numbers
  bool offline = false;        // its hub says that it is gone
  bool dies_of_yes = false;    // falls silent instead of saying "wet" or "reached"
  double drifts_per_hour = 0;  // in its unit
  Instant drifts_since = long_ago;
  std::optional<double> spike;  // says this once
};

// What an instrument says when it speaks.
struct Utterance {
  bool understood = true;
  double value = 0;
};

class Voice {
 public:
  Voice(const room::Instrument&, const VoiceSettings&, std::uint64_t seed, Instant begins);

  // What it says now of the truth, if it is its time or (on change) the truth has moved.
  std::optional<Utterance> speak(double truth, Instant now);
  // A change of its availability (as its hub tells), if there is one by now.
  std::optional<bool> availability(Instant now);
  // When it speaks next if nothing changes.
  Instant next() const { return next_; }

  VoiceFaults faults;

 private:
  double shown(double truth);
  Duration interval();

  const room::Instrument* instrument_;
  VoiceSettings settings_;
  Chance chance_;
  Instant next_;
  Instant heard_;  // when its hub last heard of it
  double said_ = 0;
  bool has_said_ = false;
  bool online_ = false;
};

}  // namespace tidewright::rehearsal
