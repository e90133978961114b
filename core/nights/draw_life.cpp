// What persons do in a night, rightly or not, and what happens to water.
#include <algorithm>
#include <array>

#include "core/nights/drawing.hpp"
#include "core/room/cause.hpp"

namespace tidewright::nights {

using namespace std::chrono_literals;

void draw_life(Night& night, Chance& chance, const room::Room& room) {
  const Duration latest = night.lasting - 1h;
  for (const FaultKind* kind : fault_kinds()) {
    if (kind->number > 0 || subjects(*kind, room).empty() || !happens(chance, 6)) continue;
    night.faults.push_back(
        draw_fault(chance, *kind, room, between(chance, quiet_at_first, latest)));
  }
}

// What persons start by name, for so long; and what they take of the mixed water meanwhile.
void draw_runs(Night& night, Chance& chance, const room::Room& room) {
  const FaultKind& starts = *fault_kind_named("starts_run");
  if (subjects(starts, room).empty()) return;
  for (std::uint64_t left = chance.bits() % 6; left > 0; --left) {
    const Duration at = between(chance, quiet_at_first, night.lasting - 1h);
    night.faults.push_back(draw_fault(chance, starts, room, at));
    if (!happens(chance, 40)) continue;
    add(night, "mixed_water_drawn", at + between(chance, 1min, 1h), no_subject,
        between(chance, 5, 80));
  }
}

// Somebody stops the fill, tries the plug that has just failed, and starts again, and goes away.
static void draw_try(Night& night, Chance& chance, const Fault& plug) {
  const Duration at = plug.at + between(chance, 1min, 5min);
  add(night, "asks_stop", at, no_subject, 60);
  add(night, "tests_lease", at + between(chance, 2min, 5min), plug.subject);
  add(night, "asks_start", at + between(chance, 25min, 50min));
}

// Persons who want to go on whatever the sensors say, or who try what the plugs can.
void draw_trust(Night& night, Chance& chance, const room::Room& room, const Fault& fault) {
  using room::CauseId;
  static constexpr std::array causes{
      CauseId::leak_wet,       CauseId::leak_sensor_lost,    CauseId::leak_sensor_awaited,
      CauseId::high_high_lost, CauseId::after_unclean_start, CauseId::frost,
      CauseId::pump_dry};
  const FaultKind& tests = *fault_kind_named("tests_lease");
  const bool plug_fails = fault.kind->number == 18;
  if (plug_fails && happens(chance, 50)) draw_try(night, chance, fault);
  if (happens(chance, 15) && !room.actuators.empty()) {
    Fault test = draw_fault(chance, tests, room, fault.at + between(chance, 1min, 30min));
    if (fault.kind->subject == Subject::actuator) test.subject = fault.subject;
    night.faults.push_back(test);
  }
  if (!happens(chance, 15)) return;
  Duration at = std::max<Duration>(quiet_at_first, fault.at + between(chance, -10min, 30min));
  for (std::uint64_t left = 1 + chance.bits() % 3; left > 0; --left, at += 10s) {
    const auto cause = static_cast<std::uint8_t>(causes[chance.bits() % causes.size()]);
    add(night, happens(chance, 15) ? "bypasses_with_wrong_token" : "bypasses", at, cause,
        between(chance, 1, 60));
    if (happens(chance, 20)) add(night, "ends_bypass", at + between(chance, 1min, 1h), cause);
  }
}

// Water on the floor about when something else is wrong; then somebody dries it, or resets too
// soon.
void draw_leak(Night& night, Chance& chance, Duration about) {
  const Duration at = std::max<Duration>(quiet_at_first, about + between(chance, -2min, 20min));
  add(night, "spill", at, no_subject, between(chance, 0.1, 20));
  const auto leak = static_cast<std::uint8_t>(room::RuleId::leak);
  if (happens(chance, 40)) add(night, "resets", at + between(chance, 10s, 40min), leak);
  if (happens(chance, 20)) add(night, "acknowledges", at + between(chance, 10s, 40min), leak);
  if (happens(chance, 10)) {
    add(night, "shelves", at + between(chance, 10s, 40min), leak, between(chance, 5, 120));
  }
  if (happens(chance, 75)) {
    const Duration dried = at + between(chance, 30s, 90min);
    add(night, "floor_dried", dried);
    if (happens(chance, 70)) {
      const Duration reset = dried + between(chance, 1min, 30min);
      add(night, "resets", reset, leak);
      add(night, "asks_start", reset + between(chance, 10s, 10min), no_subject,
          between(chance, 0, 120));
    }
  }
}

}  // namespace tidewright::nights
