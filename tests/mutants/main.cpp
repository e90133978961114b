// Makes each deliberate mistake of core/base/mutant.hpp in turn and lives through nights until an
// invariant sees it, in a night in which it sees nothing without the mistake. A mistake that none
// sees, or an invariant that sees none, is a blind checker: exit 1.
//   mutants [NIGHTS]   at most so many for each (2000)
#include <fmt/core.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <iterator>
#include <set>
#include <string>
#include <string_view>
#include <utility>

#include "core/base/mutant.hpp"
#include "core/nights/draw.hpp"
#include "core/nights/run.hpp"
#include "tests/support/households.hpp"

namespace tidewright {
namespace {

struct Row {
  Mutant mutant;
  std::string_view mistake;
};

constexpr Row rows[] = {
    {Mutant::retained_dry_believed, "a retained \"dry\" is taken for a live one"},
    {Mutant::stale_never, "silence never makes a signal stale"},
    {Mutant::latch_not_persisted, "the disk does not get the latches"},
    {Mutant::resets_itself, "a latch goes when its cause does"},
    {Mutant::reset_whatever_stands, "a reset does not look at the cause"},
    {Mutant::reset_by_uncertain, "a reset takes what is uncertain for dry"},
    {Mutant::any_token_will_do, "a reset or a bypass is confirmed with any token"},
    {Mutant::acknowledging_resets, "acknowledging an alarm resets its latch"},
    {Mutant::shelving_resets, "shelving an alarm resets its latch"},
    {Mutant::shelving_bypasses, "what is shelved trips no more"},
    {Mutant::acknowledging_stops_water, "acknowledging an alarm ends the demand for water"},
    {Mutant::lease_not_required, "unattended runs without anybody to keep the lease"},
    {Mutant::link_return_keeps_on, "what was ON before the line broke is ON after it"},
    {Mutant::off_not_repeated, "OFF is sent once only"},
    {Mutant::wet_not_answered, "a wet report while OFF is not answered"},
    {Mutant::one_dry_of_two_overrules, "a dry leak sensor overrules a wet one"},
    {Mutant::before_start_not_required, "a start does not wait for the leak sensors"},
    {Mutant::no_wait_after_unclean_start, "an unclean start waits for nothing"},
    {Mutant::level_at_stop_ignored, "STOP is no limit"},
    {Mutant::level_lost_ignored, "a gauge that is not good is no matter"},
    {Mutant::high_high_lost_ignored, "a highest float switch that is not good is no matter"},
    {Mutant::day_limit_forgotten_at_restart, "a restart begins a new day of running"},
    {Mutant::totals_begin_anew, "a restart begins the totals anew"},
    {Mutant::older_accepted, "an older word overrules a newer one"},
    {Mutant::command_shown_as_feedback, "the command is shown as if it were feedback"},
    {Mutant::first_cause_lost, "the first cause is not marked"},
    {Mutant::wall_clock_timers, "timers run on the wall clock"},
    {Mutant::frost_ignored, "frost is no matter"},
    {Mutant::rest_ignored, "the pump gets no rest"},
    {Mutant::wet_ignored, "water on the floor is no matter"},
    {Mutant::pause_ends_demand, "a pause ends the demand for water"},
    {Mutant::start_refused_after_trip, "nobody can start again after a trip"},
    {Mutant::run_never_ends, "a run of so many minutes does not end"},
    {Mutant::bypass_never_ends, "a bypass does not end with its time"},
    {Mutant::bypass_outlives_restart, "a bypass outlives a restart"},
    {Mutant::lease_test_ignores_trips, "the test of a lease goes on while a trip stands"},
    {Mutant::failed_lease_holds_nothing,
     "a lease that was not kept does not hold unattended water"},
    {Mutant::heater_runs_below_low, "the heater runs below low"},
    {Mutant::mixing_vat_stop_ignored, "the mixing vat's stop is no limit"},
    {Mutant::exclusive_not_checked, "what excludes each other is not checked"},
    {Mutant::remembers_beside_state, "something is remembered beside the state"},
};

using Names = std::set<std::string>;

constexpr std::uint64_t nights_after_the_first = 60;

class Nights {
 public:
  Nights() {
    for (const support::Household& household : households_) {
      if (room::fills_to_a_mark(household.room)) filling_.push_back(household);
    }
  }

  // Mostly incidents; every fourth night asks that water is made again.
  std::vector<nights::Violation> live(std::uint64_t seed) const {
    const bool recovery = seed % 4 == 3;
    const auto& among = recovery ? filling_ : households_;
    const support::Household& household = among[seed / 4 % among.size()];
    const auto night = recovery ? nights::draw_recovery(household.name, household.room, seed)
                                : nights::draw_incident(household.name, household.room, seed);
    return nights::Run(household.room, night).live().violations;
  }

 private:
  const std::vector<support::Household> households_ = support::households();
  std::vector<support::Household> filling_;
};

// A night that is violated without any mistake says nothing of the mistake; and must not be.
bool is_quiet_without(const Nights& nights, std::uint64_t seed) {
  const Mutant made = std::exchange(mutant_made, Mutant::none);
  const auto violations = nights.live(seed);
  mutant_made = made;
  for (const nights::Violation& violation : violations) {
    fmt::print("seed {} without any mistake: {} at {:.0f} s: {}\n", seed, violation.name,
               seconds(violation.at), violation.text);
  }
  return violations.empty();
}

// What came of one mistake.
struct Seen {
  Names names;        // of the invariants that saw it
  bool quiet = true;  // nothing was violated without it
};

// Within so many nights and a few after the first; prints its row.
Seen see(const Row& row, const Nights& nights, std::uint64_t nights_most) {
  Seen seen;
  std::string first = "**nobody**";
  std::uint64_t in_night = nights_most, last = nights_most;
  mutant_made = row.mutant;
  for (std::uint64_t seed = 0; seed < last; ++seed) {
    const auto violations = nights.live(seed);
    if (violations.empty()) continue;
    if (!is_quiet_without(nights, seed)) {
      seen.quiet = false;
      continue;
    }
    if (seen.names.empty()) {
      first = fmt::format("{} `{}`", violations.front().number, violations.front().name);
      in_night = seed + 1;
      last = std::min(last, in_night + nights_after_the_first);
    }
    for (const nights::Violation& violation : violations) seen.names.insert(violation.name);
  }
  mutant_made = Mutant::none;
  const std::size_t others = seen.names.empty() ? 0 : seen.names.size() - 1;
  fmt::print("| {} | {} | {} | {} |\n", row.mistake, first, in_night, others);
  std::fflush(stdout);
  return seen;
}

int run(std::uint64_t nights_most) {
  const Nights nights;
  std::size_t seen = 0;
  bool quiet = true;
  Names seeing;
  fmt::print("| mistake | seen first by | in night | by others |\n|---|---|---|---|\n");
  for (const Row& row : rows) {
    const Seen came = see(row, nights, nights_most);
    seen += came.names.empty() ? 0 : 1;
    quiet = quiet && came.quiet;
    seeing.insert(came.names.begin(), came.names.end());
  }
  fmt::print("\n{} of {} mistakes seen\n", seen, std::size(rows));
  bool blind = false;
  for (const nights::Invariant* invariant : nights::invariants()) {
    if (seeing.contains(std::string(invariant->name))) continue;
    fmt::print("{} saw none of them\n", invariant->name);
    blind = true;
  }
  return seen == std::size(rows) && quiet && !blind ? 0 : 1;
}

}  // namespace
}  // namespace tidewright

int main(int count, char** words) {
  return tidewright::run(count > 1 ? std::strtoull(words[1], nullptr, 10) : 2000);
}
