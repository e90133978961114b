// The vat with its float valve: water in, water out, and over the brim.
#pragma once

#include <algorithm>

#include "core/base/units.hpp"

namespace tidewright::rehearsal {

class Vat {
 public:
  explicit Vat(Litres capacity, Litres holding) : capacity_(capacity), holding_(holding) {}

  Litres holding() const { return holding_; }
  Litres capacity() const { return capacity_; }

  // Returns what runs over the brim.
  Litres pour(Litres water) {
    holding_ += water;
    const Litres over = std::max(Litres{0}, holding_ - capacity_);
    holding_ = holding_ - over;
    return over;
  }
  // Returns what was really there to take.
  Litres draw(Litres water) {
    const Litres taken = std::min(water, holding_);
    holding_ = holding_ - taken;
    return taken;
  }

 private:
  Litres capacity_;
  Litres holding_;
};

// Closes by the water's own lift, and opens again when the vat has been drawn down a little.
struct FloatValve {
  Litres closes_at;
  Litres opens_at;
  bool stuck = false;  // stays as it is
  bool closed = false;

  void feel(Litres level) {
    if (stuck) return;
    if (level >= closes_at) closed = true;
    if (level <= opens_at) closed = false;
  }
};

}  // namespace tidewright::rehearsal
