#include <algorithm>

#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;

// It is said again after 1, 2 and 4 s and then every minute; the instruments wake the daemon.
constexpr Duration apart_most = 65s;

Complaint judge(const Scene& scene) {
  if (!scene.witness.linked) return std::nullopt;
  return for_each_actuator(scene.room, moves_water, [&](room::ActuatorIndex i) -> Complaint {
    const auto feedback = room::find(scene.room, room::Quantity::feedback, i);
    const bool tripped =
        std::any_of(scene.state.latches.items.begin(), scene.state.latches.items.end(),
                    [role = scene.room.actuators[i].role](const state::Latch& latch) {
                      return state::holds(latch, role);
                    });
    if (!feedback || !tripped) return std::nullopt;
    const Witness& witness = scene.witness;
    const Heard& heard = witness.heard[*feedback];
    const bool says_on = witness.fresh(*feedback) && heard.live && heard.value >= 0.5 &&
                         heard.nonsense_in_a_row == 0;
    if (!says_on || witness.now - heard.same_since < apart_most) return std::nullopt;
    const Duration silent = witness.now - witness.ordered[i].sent;
    if (silent <= apart_most) return std::nullopt;
    return fmt::format("{} says ON while a trip stands, and was not told OFF for {:.0f} s",
                       scene.room.actuators[i].id, seconds(silent));
  });
}

}  // namespace

extern const Invariant off_is_repeated{
    .number = 2,
    .name = "off_is_repeated",
    .sentence = "while a trip stands, OFF is said again and again to what says that it is ON",
    .after_step = judge};

}  // namespace tidewright::nights
