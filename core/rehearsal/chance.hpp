// Seeded chance, the same on every machine: the pretend room's noise and nothing else.
#pragma once

#include <cstdint>

namespace tidewright::rehearsal {

// SplitMix64 (Steele, Lea, Flood 2014; from memory): small, and enough for noise.
class Chance {
 public:
  explicit Chance(std::uint64_t seed) : state_(seed) {}

  std::uint64_t bits() {
    state_ += 0x9E3779B97F4A7C15U;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
    return z ^ (z >> 31U);
  }
  // 0 <= x < 1
  double uniform() { return static_cast<double>(bits() >> 11U) * 0x1.0p-53; }
  // Mean 0, standard deviation 1, never beyond 6: the sum of twelve uniforms.
  double normal() {
    double sum = -6;
    for (int i = 0; i < 12; ++i) sum += uniform();
    return sum;
  }

 private:
  std::uint64_t state_;
};

}  // namespace tidewright::rehearsal
