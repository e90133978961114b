#include "core/rules/lost.hpp"

#include <algorithm>

namespace tidewright::rules {

bool came_back(const picture::Picture& picture, room::InstrumentIndex i) {
  const state::Signal& signal = picture.signals[i];
  if (signal.quality != Quality::good) return false;
  return picture.room.instruments[i].on_change || signal.good_in_a_row >= 2;
}

float seconds_without(const picture::Picture& picture, room::InstrumentIndex i) {
  const Instant since = std::max(picture.signals[i].received, picture.circumstances.started);
  return static_cast<float>(seconds(picture.now - since));
}

bool awaited(const state::Signal& signal) {
  return signal.why == Why::awaiting_after_link || signal.why == Why::retained_only;
}

}  // namespace tidewright::rules
