#include "core/alarm/notices.hpp"

namespace tidewright::alarm {

void enter(const Effects& effects, Instant now, state::Notices& notices) {
  for (const Effect& effect : effects) {
    const auto* told = std::get_if<Announcement>(&effect);
    if (told == nullptr) continue;
    const std::uint32_t number = ++notices.last;
    notices.items[number % state::notices_kept] = {number,           now,         told->alarm,
                                                   told->occurrence, told->event, told->why};
  }
}

}  // namespace tidewright::alarm
