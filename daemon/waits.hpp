// What the loop waits for, as descriptors that become readable. Used by the loop alone.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>

#include "daemon/base/descriptor.hpp"

namespace tidewright {

// Goes on counting while the machine sleeps. Readable when it rings, until taken() or set().
class Timer : public Descriptor {
 public:
  Timer();
  // Rings after `delay`, then every `interval`; with 0, once.
  void set(std::chrono::nanoseconds delay, std::chrono::nanoseconds interval);
  void taken();
};

// TERM, INT and HUP; readable when one came. They must be blocked before any thread is made, so
// that every thread inherits it.
void block_stop_signals();
class StopSignals : public Descriptor {
 public:
  StopSignals();
};

// Waits for several descriptors at once.
class Waits : public Descriptor {
 public:
  Waits();
  // A descriptor that is closed leaves by itself.
  void add(int descriptor, std::uint32_t name);
  // The name of one that is readable; each in its turn when several are. None if a debugger or a
  // stopped process broke the wait.
  std::optional<std::uint32_t> next();
};

}  // namespace tidewright
