#include <algorithm>
#include <array>
#include <utility>

#include "core/nights/invariants/judging.hpp"
#include "core/nights/invariants/way_to_off.hpp"

namespace tidewright::nights {
namespace {

using room::Role;

// The vat that is filled is not drawn from; its water goes not to the drain at the same time.
constexpr std::array pairs{
    std::pair{Role::booster_pump, Role::transfer_pump},
    std::pair{Role::feed_valve, Role::transfer_pump},
    std::pair{Role::fill_valve, Role::transfer_pump},
    std::pair{Role::fill_valve, Role::divert_valve},
    std::pair{Role::fill_valve, Role::flush_valve},
};

// Calls `judge(one, other)` for each pair that the room has, until one complains.
template <class Judge>
Complaint for_each_pair(const room::Room& room, const Judge& judge) {
  for (const auto& [first, second] : pairs) {
    const auto one = room::find(room, first);
    const auto other = room::find(room, second);
    if (!one || !other) continue;
    if (auto complaint = judge(*one, *other)) return complaint;
  }
  return std::nullopt;
}

Complaint judge_orders(const Scene& scene) {
  const auto& ordered = scene.witness.ordered;
  return for_each_pair(scene.room, [&](auto one, auto other) -> Complaint {
    if (!ordered[one].on || !ordered[other].on) return std::nullopt;
    return fmt::format("{} and {} are both ordered ON", scene.room.actuators[one].id,
                       scene.room.actuators[other].id);
  });
}

// Of two relays that are closed one is not ordered so any more, and its lease must end it.
Complaint judge_truth(const Moment& moment) {
  const auto& on_since = moment.witness.on_since;
  return for_each_pair(moment.room, [&](auto one, auto other) -> Complaint {
    if (on_since[one] == never || on_since[other] == never) return std::nullopt;
    const Instant since = std::max(on_since[one], on_since[other]);
    for (const auto i : {one, other}) {
      // One that was welded, and whose feedback does not tell, is not told OFF once more after it.
      const bool told = room::find(moment.room, room::Quantity::feedback, i).has_value();
      if (moment.room.actuators[i].lease_kind == room::LeaseKind::none ||
          stays_on(moment, i, told ? since : on_since[i])) {
        return std::nullopt;
      }
    }
    const Duration lasted = moment.witness.now - since;
    const Duration bound =
        std::max(lease_to_off(moment, one, since), lease_to_off(moment, other, since));
    if (lasted <= bound) return std::nullopt;
    return fmt::format("{} and {} were both ON for {:.0f} s; {:.0f} s are allowed",
                       moment.room.actuators[one].id, moment.room.actuators[other].id,
                       seconds(lasted), seconds(bound));
  });
}

}  // namespace

extern const Invariant never_both_on{
    .number = 9,
    .name = "never_both_on",
    .sentence =
        "what fills a vat and what empties it are never both ordered ON; in truth not for longer "
        "than a lease, one pass and the delivery",
    .after_step = judge_orders,
    .at_any_time = judge_truth};

}  // namespace tidewright::nights
