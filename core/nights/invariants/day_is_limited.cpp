#include <algorithm>

#include "core/nights/fault.hpp"
#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;

// A day's count may be taken by feedback, which comes when it is due, and a little later.
constexpr Duration on_the_way = 10s;

// What the plan lets nobody know: the record that the disk did not take, the relay that the
// feedback is late about.
bool is_unknowable(const Night& night) {
  return std::any_of(night.faults.begin(), night.faults.end(), [](const Fault& fault) {
    return fault.kind->name == "disk_refuses" || fault.kind->name == "feedback_lags" ||
           fault.kind->name == "feedback_lies";
  });
}

Complaint judge(const Scene& scene) {
  for (std::size_t i = 0; i < scene.room.actuators.size(); ++i) {
    const Duration longest = scene.room.actuators[i].on_per_day_longest;
    const Ordered& order = scene.witness.ordered[i];
    if (longest >= Duration{24h} || order.on_for < longest || is_unknowable(scene.night)) continue;
    const Duration each_run =
        room::feedback_due(scene.room, static_cast<room::ActuatorIndex>(i)) + on_the_way;
    const auto days = 1 + (scene.witness.now - scene.begin) / Duration{24h};
    // A crash forgets what has passed since the step before; each renewal is one.
    const Duration forgotten = scene.witness.crashes * scene.room.actuators[i].lease / 3;
    const Duration allowed = days * longest + order.starts_in_all * each_run + forgotten;
    if (order.on_for <= allowed) continue;
    return fmt::format("{} was ordered ON for {:.0f} s; {:.0f} s are allowed",
                       scene.room.actuators[i].id, seconds(order.on_for), seconds(allowed));
  }
  return std::nullopt;
}

}  // namespace

extern const Invariant day_is_limited{
    .number = 6,
    .name = "day_is_limited",
    .sentence = "the time ON in a day stays within the file's limit, over every restart",
    .after_step = judge};

}  // namespace tidewright::nights
