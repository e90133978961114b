// The one way in which a test waits for something that nobody will tell it of.
#pragma once

#include <poll.h>

#include <chrono>

namespace tidewright::support {

// Asks `holds` again and again until it says yes, or `bound` is over; returns what it said last.
// Bounds are about 10 times what was measured.
template <class Condition>
bool eventually(std::chrono::milliseconds bound, Condition holds) {
  const auto end = std::chrono::steady_clock::now() + bound;
  while (!holds()) {
    if (std::chrono::steady_clock::now() >= end) return false;
    poll(nullptr, 0, 1);  // leaves the processor to what is waited for
  }
  return true;
}

}  // namespace tidewright::support
