// What befalls the water itself. No fault of anybody's: what the daemon is there for.
#include <array>
#include <chrono>

#include "core/nights/fault.hpp"
#include "core/nights/run.hpp"

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;

constexpr std::array rows{
    FaultKind{
        0, "spill", "water on the floor", Subject::none, 0s, 0s, 0.1, 20, "l", Excuse::nothing,
        Stops::nothing,
        [](Run& run, const Fault& fault) { run.pretend().works().spill(Litres{fault.amount}); },
        nullptr},
    FaultKind{0, "burst_fitting", "a fitting leaks while it is under pressure", Subject::none,
              10min, 8h, 0.5, 100, "l/h", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) {
                run.pretend().works().burst = LitresPerHour{fault.amount};
              },
              [](Run& run, const Fault&) { run.pretend().works().burst = LitresPerHour{0}; }},
    FaultKind{0, "floor_dried", "somebody dries the floor", Subject::none, 0s, 0s, 0, 0, "",
              Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault&) { run.pretend().works().dry_floor(); }, nullptr},
    FaultKind{
        0, "drawn", "somebody takes water out of the vat", Subject::none, 0s, 0s, 1, 150, "l",
        Excuse::nothing, Stops::nothing,
        [](Run& run, const Fault& fault) { run.pretend().works().draw(Litres{fault.amount}); },
        nullptr},
    FaultKind{0, "mixed_water_drawn", "somebody takes water out of the mixing vat", Subject::none,
              0s, 0s, 1, 80, "l", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) {
                run.pretend().works().draw_mixed(Litres{fault.amount});
              },
              nullptr},
    FaultKind{
        0, "poured", "somebody pours water into the vat", Subject::none, 0s, 0s, 1, 100, "l",
        Excuse::nothing, Stops::nothing,
        [](Run& run, const Fault& fault) { run.pretend().works().pour(Litres{fault.amount}); },
        nullptr},
    FaultKind{0, "feed_shut", "the feed cock is closed", Subject::none, 10min, 6h, 0, 0, "",
              Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault&) { run.pretend().works().feed_shut = true; },
              [](Run& run, const Fault&) { run.pretend().works().feed_shut = false; }},
    FaultKind{0, "feed_valve_sticks", "the feed valve does not close", Subject::none, 10min, 6h, 0,
              0, "", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault&) { run.pretend().works().feed_valve_stuck = true; },
              [](Run& run, const Fault&) { run.pretend().works().feed_valve_stuck = false; }},
    FaultKind{0, "float_valve_sticks", "the vat's float valve stays as it is", Subject::none, 10min,
              8h, 0, 0, "", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault&) { run.pretend().works().float_valve.stuck = true; },
              [](Run& run, const Fault&) { run.pretend().works().float_valve.stuck = false; }},
    FaultKind{0, "pump_breaks", "the pump has power and does not turn", Subject::none, 10min, 6h, 0,
              0, "", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault&) { run.pretend().works().pump_broken = true; },
              [](Run& run, const Fault&) { run.pretend().works().pump_broken = false; }},
};

}  // namespace

std::span<const FaultKind> faults_of_water() { return rows; }

}  // namespace tidewright::nights
