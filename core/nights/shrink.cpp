#include "core/nights/shrink.hpp"

#include <algorithm>
#include <chrono>
#include <optional>

#include "core/nights/run.hpp"

namespace tidewright::nights {
namespace {

// Enough for any night, and an end to the patience with a long one.
constexpr int runs_most = 150;

class Shrinking {
 public:
  Shrinking(const room::Room& household, std::string_view invariant)
      : household_(household), invariant_(invariant) {}

  // When the night violates the invariant, if it does.
  std::optional<Duration> violates(const Night& night) {
    if (runs_++ >= runs_most) return std::nullopt;
    const Outcome outcome = Run(household_, night).live();
    for (const Violation& violation : outcome.violations) {
      if (violation.name == invariant_) return violation.at;
    }
    return std::nullopt;
  }

  // Leaves out so many faults at once, wherever that is possible.
  void leave_out(Night& night, std::size_t together) {
    for (std::size_t i = 0; i < night.faults.size();) {
      Night shorter = night;
      const auto first = shorter.faults.begin() + static_cast<std::ptrdiff_t>(i);
      const std::size_t many = std::min(together, shorter.faults.size() - i);
      shorter.faults.erase(first, first + static_cast<std::ptrdiff_t>(many));
      if (violates(shorter)) {
        night = shorter;
      } else {
        i += together;
      }
    }
  }

 private:
  const room::Room& household_;
  const std::string_view invariant_;
  int runs_ = 0;
};

}  // namespace

Night shrink(const room::Room& household, const Night& night, std::string_view invariant) {
  Shrinking shrinking(household, invariant);
  Night shortest = night;
  if (const auto at = shrinking.violates(shortest)) {
    shortest.lasting = std::min(shortest.lasting, *at + std::chrono::minutes{1});
  }
  for (std::size_t together = shortest.faults.size(); together > 0; together /= 2) {
    shrinking.leave_out(shortest, together);
  }
  for (const HabitRow& row : habits()) {
    Night plainer = shortest;
    plainer.habits.*row.value = Habits{}.*row.value;
    if (shrinking.violates(plainer)) shortest = plainer;
  }
  if (const auto at = shrinking.violates(shortest)) {
    shortest.lasting = std::min(shortest.lasting, *at + std::chrono::minutes{1});
  }
  return shortest;
}

}  // namespace tidewright::nights
