#include "core/signal/note.hpp"

#include <algorithm>

#include "core/base/mutant.hpp"

namespace tidewright::signal {

void note(const Event& event, state::Circumstances& known) {
  known.now = std::max(known.now, event.at);
  if (mutant(Mutant::wall_clock_timers)) known.now = event.at + known.wall.ahead;
  if (const auto* started = std::get_if<Started>(&event.what)) {
    known.started = known.now;
    known.unclean = !started->clean;
    known.unreadable = !started->readable;
    known.away = started->away;
    // One that ended without notice may have lost what it heard last.
    known.unheard_since = started->clean ? known.now - started->away : long_ago;
    known.link_up = false;
    known.link_since = known.now;
    known.recording = true;
    known.stopping = false;
    known.delivery = {};
  } else if (const auto* link = std::get_if<Link>(&event.what)) {
    if (link->up != known.link_up) known.link_since = known.now;
    if (known.link_up) known.unheard_since = known.now;
    known.link_up = link->up;
  } else if (const auto* clock = std::get_if<ClockSet>(&event.what)) {
    known.wall = clock->wall;
  } else if (const auto* recorded = std::get_if<Recorded>(&event.what)) {
    known.recording = recorded->ok;
  } else if (const auto* delivery = std::get_if<Delivery>(&event.what)) {
    known.delivery[delivery->actuator] = delivery->code;
  } else if (std::holds_alternative<Stopping>(event.what)) {
    known.stopping = true;
  }
}

}  // namespace tidewright::signal
