// The pretend store: what a crash leaves of the daemon's state. As daemon/store has it: each step
// is handed over, written a little later, and sooner when asked for. Called by run.cpp only.
#pragma once

#include <cstdint>

#include "core/effect.hpp"
#include "core/state/state.hpp"

namespace tidewright::nights {

class Disk {
 public:
  explicit Disk(Duration takes) : takes_(takes) {}

  // The state as a step left it; `step` counts the steps of all runs.
  void record(const State&, std::uint64_t step, Instant now);
  // The step asked for it to be kept: it is under way at once.
  void persist(Instant now);
  // When a write is done, or is refused.
  Instant next() const { return due_; }
  // Lets that happen if it is due. Whether there is an answer to those who asked.
  bool write(Instant now);
  // The daemon ends on purpose and waits for the disk. False if it refuses.
  bool close();
  // The daemon is gone: what was under way is lost.
  void crash() { due_ = never; }

  // What a new run finds.
  const State& kept() const { return kept_; }
  std::uint64_t kept_step() const { return kept_step_; }

  bool refuses = false;

 private:
  void keep();

  Duration takes_;
  State recorded_, kept_;
  std::uint64_t recorded_step_ = 0, kept_step_ = 0;
  bool asked_ = false;
  Instant due_ = never;
};

}  // namespace tidewright::nights
