#include "core/signal/spike.hpp"

#include <algorithm>
#include <array>

namespace tidewright::signal {

double despiked(const room::Instrument& instrument, state::Signal& signal, double value) {
  if (instrument.median_of <= 1) return value;
  auto& before = signal.before;
  std::array<float, 5> latest{static_cast<float>(value)};
  std::copy(before.begin(), before.end(), latest.begin() + 1);
  int taken = std::min<int>(instrument.median_of, signal.befores + 1);
  if (taken % 2 == 0) --taken;

  std::copy_backward(before.begin(), before.end() - 1, before.end());
  before[0] = latest[0];
  if (signal.befores < before.size()) ++signal.befores;

  const auto middle = latest.begin() + taken / 2;
  std::nth_element(latest.begin(), middle, latest.begin() + taken);
  return static_cast<double>(*middle);
}

}  // namespace tidewright::signal
