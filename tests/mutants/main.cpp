// Makes each deliberate mistake of core/base/mutant.hpp in turn and lives through nights until an
// invariant sees it. A mistake that none sees is a blind checker: exit 1.
//   mutants [NIGHTS]   at most so many for each (2000)
#include <fmt/core.h>

#include <cstdlib>
#include <iterator>
#include <string>
#include <string_view>

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
    {Mutant::any_token_will_do, "a reset is confirmed with any token"},
    {Mutant::acknowledging_resets, "acknowledging an alarm resets its latch"},
    {Mutant::shelving_resets, "shelving an alarm resets its latch"},
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
};

// Whether an invariant sees the mistake that is made within so many nights; prints its row.
bool is_seen(const Row& row, const std::vector<support::Household>& households,
             std::uint64_t nights_most) {
  for (std::uint64_t seed = 0; seed < nights_most; ++seed) {
    const support::Household& household = households[seed % households.size()];
    const auto night = nights::draw_incident(household.name, household.room, seed);
    const auto outcome = nights::Run(household.room, night).live();
    if (outcome.violations.empty()) continue;
    const nights::Violation& first = outcome.violations.front();
    fmt::print("| {} | {} {} | {} |\n", row.mistake, first.number, first.name, seed + 1);
    return true;
  }
  fmt::print("| {} | **nobody** | {} |\n", row.mistake, nights_most);
  return false;
}

// Without any mistake nothing may be seen, or what is seen of the others says nothing.
bool is_quiet_without(const std::vector<support::Household>& households) {
  constexpr std::uint64_t nights_lived = 200;
  for (std::uint64_t seed = 0; seed < nights_lived; ++seed) {
    const support::Household& household = households[seed % households.size()];
    const auto night = nights::draw_incident(household.name, household.room, seed);
    for (const nights::Violation& violation :
         nights::Run(household.room, night).live().violations) {
      fmt::print("seed {} without any mistake: {} at {:.0f} s: {}\n", seed, violation.name,
                 seconds(violation.at), violation.text);
      return false;
    }
  }
  return true;
}

int run(std::uint64_t nights_most) {
  const auto households = support::households();
  if (!is_quiet_without(households)) return 1;
  std::size_t seen = 0;
  fmt::print("| mistake | seen by invariant | in night |\n|---|---|---|\n");
  for (const Row& row : rows) {
    mutant_made = row.mutant;
    if (is_seen(row, households, nights_most)) ++seen;
    std::fflush(stdout);
  }
  mutant_made = Mutant::none;
  fmt::print("\n{} of {} mistakes seen\n", seen, std::size(rows));
  return seen == std::size(rows) ? 0 : 1;
}

}  // namespace
}  // namespace tidewright

int main(int count, char** words) {
  return tidewright::run(count > 1 ? std::strtoull(words[1], nullptr, 10) : 2000);
}
