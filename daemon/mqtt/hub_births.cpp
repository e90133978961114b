#include "daemon/mqtt/hub_births.hpp"

#include <algorithm>

namespace tidewright::mqtt {

void HubBirths::heard(Clock::time_point now) {
  if (due_) return;
  std::uniform_int_distribution<std::chrono::milliseconds::rep> jitter(jitter_shortest.count(),
                                                                       jitter_longest.count());
  const std::chrono::milliseconds wait{jitter(chance_)};
  due_ = (answered_ ? std::max(now, *answered_ + apart) : now) + wait;
}

void HubBirths::answered(Clock::time_point now) {
  due_.reset();
  answered_ = now;
}

}  // namespace tidewright::mqtt
