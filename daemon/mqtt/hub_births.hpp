// When to answer a hub that has just started: soon, for it shows nothing until then; not at once
// together with every other device of the house; and rarely, though it start again and again.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <random>

namespace tidewright::mqtt {

class HubBirths {
 public:
  using Clock = std::chrono::steady_clock;
  // No birth waits for longer than `apart` and `jitter_longest` together, which is under 10 s.
  static constexpr std::chrono::milliseconds apart{8'000};
  static constexpr std::chrono::milliseconds jitter_shortest{200}, jitter_longest{1'500};

  explicit HubBirths(std::uint32_t seed) : chance_(seed) {}

  void heard(Clock::time_point now);
  // When the answer is due, if a birth waits for one.
  std::optional<Clock::time_point> due() const { return due_; }
  void answered(Clock::time_point now);

 private:
  std::minstd_rand chance_;
  std::optional<Clock::time_point> due_;
  std::optional<Clock::time_point> answered_;
};

}  // namespace tidewright::mqtt
