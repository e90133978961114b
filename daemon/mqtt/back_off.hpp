// How long to wait before the next try to reach the broker: 0.2 s, doubled to at most 5 s, each
// shortened by chance so that many clients of a broker that returns do not come all at once.
#pragma once

#include <chrono>
#include <cstdint>
#include <random>

namespace tidewright::mqtt {

using Milliseconds = std::chrono::milliseconds;

class BackOff {
 public:
  static constexpr Milliseconds first{200};
  static constexpr Milliseconds longest{5'000};
  // Only a connection that lasted this long counts as success: a broker that accepts and then
  // drops is not asked ever faster.
  static constexpr Milliseconds stable{60'000};

  explicit BackOff(std::uint32_t seed) : chance_(seed) {}

  // After a connection that lasted `lasted`; 0 if it did not come about.
  // Between half of the present wait and the whole of it.
  Milliseconds wait(Milliseconds lasted);

 private:
  std::minstd_rand chance_;
  Milliseconds next_ = first;
};

}  // namespace tidewright::mqtt
