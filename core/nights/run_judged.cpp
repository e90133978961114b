// How a night is judged: every invariant, each time that it asks for.
#include <algorithm>
#include <chrono>

#include "core/nights/run.hpp"

namespace tidewright::nights {
namespace {

constexpr Duration reports_apart = std::chrono::minutes{15};

}  // namespace

bool Run::is_known(const Invariant& invariant) const {
  return std::any_of(outcome_.violations.begin(), outcome_.violations.end(),
                     [&](const Violation& violation) { return violation.name == invariant.name; });
}

void Run::complain(const Invariant& invariant, const Complaint& complaint) {
  if (!complaint) return;
  outcome_.violations.push_back(
      {invariant.number, std::string(invariant.name), now() - begin_, *complaint});
}

void Run::judge_moment() {
  for (const Invariant* invariant : invariants()) {
    if (invariant->at_any_time == nullptr || is_known(*invariant)) continue;
    complain(*invariant, invariant->at_any_time(moment()));
  }
}

void Run::judge_report() {
  if (!alive_ || paused_ || now() < report_due_) return;
  report_due_ = now() + reports_apart;
  const report::Report report = report::describe(room_, state_);
  for (const Invariant* invariant : invariants()) {
    if (invariant->of_report == nullptr || is_known(*invariant)) continue;
    complain(*invariant, invariant->of_report(moment(), report));
  }
}

void Run::judge_night() {
  if (!keeps_journal_) return;
  for (const Invariant* invariant : invariants()) {
    if (invariant->after_night == nullptr || is_known(*invariant)) continue;
    complain(*invariant, invariant->after_night(room_, journal_));
  }
}

void Run::judge_step(const Witness& before, const Event& event) {
  const Scene scene{moment(), before, state_before_, state_, event, effects_, wake_};
  for (const Invariant* invariant : invariants()) {
    if (invariant->after_step == nullptr || is_known(*invariant)) continue;
    complain(*invariant, invariant->after_step(scene));
  }
}

}  // namespace tidewright::nights
