// Resin: takes all the salt there is until it is nearly spent, then less and less.
#pragma once

#include "core/base/instant.hpp"
#include "core/base/units.hpp"

namespace tidewright::rehearsal {

// One canister. Its breakthrough is the logistic curve of Yoon and Nelson (1984, from memory),
// written over the salt taken up instead of over time.
class Canister {
 public:
  explicit Canister(double capacity_mg) : capacity_mg_(capacity_mg) {}

  // What comes out of it for what goes in.
  PartsPerMillion outlet(PartsPerMillion inlet) const;
  void take(Litres, PartsPerMillion inlet);
  double used() const { return taken_mg_ / capacity_mg_; }  // 1 = half of the salt passes
  void spend() { taken_mg_ = 1.3 * capacity_mg_; }

 private:
  double capacity_mg_;
  double taken_mg_ = 0;
};

}  // namespace tidewright::rehearsal
