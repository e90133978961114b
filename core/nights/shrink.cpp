#include "core/nights/shrink.hpp"

#include <algorithm>
#include <chrono>
#include <optional>

#include "core/nights/run.hpp"

namespace tidewright::nights {
namespace {

// When the night violates the invariant, if it does.
std::optional<Duration> violates(const room::Room& household, const Night& night,
                                 std::string_view invariant) {
  const Outcome outcome = Run(household, night).live();
  for (const Violation& violation : outcome.violations) {
    if (violation.name == invariant) return violation.at;
  }
  return std::nullopt;
}

bool leave_out_a_fault(const room::Room& household, Night& night, std::string_view invariant) {
  for (std::size_t i = night.faults.size(); i-- > 0;) {
    Night shorter = night;
    shorter.faults.erase(shorter.faults.begin() + static_cast<std::ptrdiff_t>(i));
    if (!violates(household, shorter, invariant)) continue;
    night = shorter;
    return true;
  }
  return false;
}

}  // namespace

Night shrink(const room::Room& household, const Night& night, std::string_view invariant) {
  Night shortest = night;
  while (leave_out_a_fault(household, shortest, invariant)) {
  }
  for (const HabitRow& row : habits()) {
    Night plainer = shortest;
    plainer.habits.*row.value = Habits{}.*row.value;
    if (violates(household, plainer, invariant)) shortest = plainer;
  }
  if (const auto at = violates(household, shortest, invariant)) {
    shortest.lasting = std::min(shortest.lasting, *at + std::chrono::minutes{1});
  }
  return shortest;
}

}  // namespace tidewright::nights
