#include "daemon/mqtt/back_off.hpp"

#include <algorithm>

namespace tidewright::mqtt {

Milliseconds BackOff::wait(Milliseconds lasted) {
  if (lasted >= stable) next_ = first;
  const Milliseconds whole = next_;
  next_ = std::min(2 * next_, longest);
  std::uniform_int_distribution<Milliseconds::rep> part(whole.count() / 2, whole.count());
  return Milliseconds{part(chance_)};
}

}  // namespace tidewright::mqtt
