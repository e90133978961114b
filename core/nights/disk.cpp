#include "core/nights/disk.hpp"

#include <algorithm>

#include "core/base/mutant.hpp"

namespace tidewright::nights {
namespace {

// The store gathers what comes within so long.
constexpr Duration gathered_for{20};

}  // namespace

void Disk::record(const State& state, std::uint64_t step, Instant now) {
  recorded_ = state;
  recorded_step_ = step;
  if (due_ == never) due_ = now + gathered_for + takes_;
}

void Disk::persist(Instant now) {
  asked_ = true;
  due_ = std::min(due_, now + takes_);
}

void Disk::keep() {
  kept_ = recorded_;
  kept_step_ = recorded_step_;
  if (mutant(Mutant::latch_not_persisted)) kept_.latches = {};
}

bool Disk::close() {
  if (!refuses) keep();
  return !refuses;
}

bool Disk::write(Instant now) {
  if (now < due_) return false;
  due_ = never;
  if (!refuses) keep();
  const bool asked = asked_;
  asked_ = false;
  return asked;
}

}  // namespace tidewright::nights
