#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;

constexpr Duration life_longest = 10s;

Complaint judge(const Scene& scene) {
  const auto* link = std::get_if<Link>(&scene.event.what);
  for (const Effect& effect : scene.effects) {
    const auto* command = std::get_if<Command>(&effect);
    if (command == nullptr) continue;
    if (command->life <= Duration{0} || command->life > life_longest) {
      return fmt::format("a command may lie for {:.0f} s", seconds(command->life));
    }
    if (command->on && link != nullptr) return "ON is the first word on a new line";
    if (!scene.witness.linked) return "a command is sent while there is no line";
  }
  if (link == nullptr || !link->up) return std::nullopt;
  for (std::size_t i = 0; i < scene.room.actuators.size(); ++i) {
    if (scene.witness.ordered[i].sent == scene.witness.now) continue;
    return scene.room.actuators[i].id + " is not told OFF on a new line";
  }
  return std::nullopt;
}

}  // namespace

extern const Invariant commands_expire{
    .number = 5,
    .name = "commands_expire",
    .sentence = "no command lies anywhere for more than 10 s; a new line begins with OFF",
    .after_step = judge};

}  // namespace tidewright::nights
