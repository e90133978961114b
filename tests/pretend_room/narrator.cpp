#include "tests/pretend_room/narrator.hpp"

#include <fmt/core.h>

#include <cstdio>

namespace tidewright::pretend {
namespace {

int tenths_full(const rehearsal::PretendRoom& pretend) {
  const rehearsal::Vat& vat = pretend.works().vat();
  return static_cast<int>(10 * (vat.holding() / vat.capacity()));
}

}  // namespace

void print_line(Duration since_begin, std::string_view words) {
  const auto total = std::chrono::duration_cast<std::chrono::seconds>(since_begin).count();
  fmt::print("{:02}:{:02}:{:02}  {}\n", total / 3600, total / 60 % 60, total % 60, words);
  std::fflush(stdout);
}

Narrator::Narrator(const room::Room& room, const rehearsal::PretendRoom& pretend)
    : room_(&room),
      begins_(pretend.now()),
      on_(room.actuators.size(), false),
      tenths_(tenths_full(pretend)) {}

void Narrator::look(rehearsal::PretendRoom& pretend) {
  const Duration since = pretend.now() - begins_;
  for (std::size_t i = 0; i < on_.size(); ++i) {
    const bool on = pretend.plug(static_cast<room::ActuatorIndex>(i)).on();
    if (on == on_[i]) continue;
    on_[i] = on;
    print_line(since, fmt::format("    room: the plug of {} switches {}", room_->actuators[i].words,
                                  on ? "ON" : "OFF"));
  }
  const bool wet = pretend.works().floor().value > 0;
  if (wet != wet_)
    print_line(since, wet ? "    room: water on the floor" : "    room: a dry floor");
  wet_ = wet;
  const int tenths = tenths_full(pretend);
  if (tenths != tenths_ && room_->vat) {
    print_line(since, fmt::format("    room: {:.0f} L in the {} vat",
                                  pretend.works().vat().holding().value, room_->vat->id));
  }
  tenths_ = tenths;
}

}  // namespace tidewright::pretend
