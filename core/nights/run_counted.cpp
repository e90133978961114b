// What is counted of a night: where the litres went, what was found, which cells were reached.
#include <algorithm>
#include <chrono>

#include "core/interlock/matrix.hpp"
#include "core/nights/run.hpp"

namespace tidewright::nights {
namespace {

constexpr Duration found_within = std::chrono::hours{2};

// What can stop or hold something by a latch of its own.
bool is_trip_input(room::RuleId rule) {
  const auto rows = interlock::matrix();
  return std::any_of(rows.begin(), rows.end(),
                     [&](const interlock::Row& row) { return row.rule == rule; });
}

}  // namespace

Phase Run::phase() const {
  const auto driving = room::driving(room_);
  if (!alive_) return Phase::not_alive;
  if (state_.make_water.demand == state::Demand::none) return Phase::no_demand;
  if (state_.make_water.demand == state::Demand::halted) return Phase::halted;
  return driving && state_.drives[*driving].on ? Phase::filling : Phase::waiting;
}

void Run::count_news() {
  for (std::size_t i = 0; i < room::rule_count; ++i) {
    if (state_.latches.items[i].set && !state_before_.latches.items[i].set) ++outcome_.trips;
    const auto rule = static_cast<room::RuleId>(i);
    if (state_.findings[rule].active && !state_before_.findings[rule].active &&
        is_trip_input(rule)) {
      found_.emplace_back(now(), rule);
    }
  }
}

void Run::count_cells() {
  for (const auto& [fault, phase] : began_) {
    const Instant began = begin_ + fault->at;
    bool any = false;
    for (const auto& [at, rule] : found_) {
      if (at < began || at > began + found_within) continue;
      outcome_.cells.insert({fault->kind, phase, static_cast<std::size_t>(rule)});
      any = true;
    }
    if (!any) outcome_.cells.insert({fault->kind, phase, room::rule_count});
  }
}

// Where the litres went: a demand stands, the vat is below STOP, and nothing runs.
void Run::account(Duration passed) {
  const auto driving = room::driving(room_);
  if (!driving || pretend_.plug(*driving).on() || witness_.full_mark(pretend_) <= 0) return;
  if (pretend_.works().vat().holding().value >= witness_.full_mark(pretend_)) return;
  if (!alive_) {
    outcome_.dead += passed;
  } else if (state_.make_water.demand != state::Demand::none) {
    outcome_.held[state_.drives[*driving].why.why] += passed;
  }
}

}  // namespace tidewright::nights
