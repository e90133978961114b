// Deliberate mistakes, to show that the checkers see. In a build without TIDEWRIGHT_MUTANTS, and
// so in every shipped one, mutant() is false at compile time and costs nothing.
#pragma once

#include <cstdint>

namespace tidewright {

enum class Mutant : std::uint8_t {
  none,
  retained_dry_believed,
  stale_never,
  latch_not_persisted,
  resets_itself,
  reset_whatever_stands,
  reset_by_uncertain,
  any_token_will_do,
  acknowledging_resets,
  shelving_resets,
  shelving_bypasses,
  acknowledging_stops_water,
  lease_not_required,
  link_return_keeps_on,
  off_not_repeated,
  wet_not_answered,
  one_dry_of_two_overrules,
  before_start_not_required,
  no_wait_after_unclean_start,
  level_at_stop_ignored,
  level_lost_ignored,
  high_high_lost_ignored,
  day_limit_forgotten_at_restart,
  totals_begin_anew,
  older_accepted,
  command_shown_as_feedback,
  first_cause_lost,
  wall_clock_timers,
  frost_ignored,
  rest_ignored,
  wet_ignored,
  pause_ends_demand,
  start_refused_after_trip,
  run_never_ends,
  bypass_never_ends,
  bypass_outlives_restart,
  lease_test_ignores_trips,
  failed_lease_holds_nothing,
  heater_runs_below_low,
  mixing_vat_stop_ignored,
  exclusive_not_checked,
  remembers_beside_state,
};

#ifdef TIDEWRIGHT_MUTANTS
extern Mutant mutant_made;  // the one mistake that is made; set by tests/mutants
inline bool mutant(Mutant mistake) { return mistake == mutant_made; }
std::uint64_t remembered_beside_state();  // another number each time
#else
constexpr bool mutant(Mutant) { return false; }
constexpr std::uint64_t remembered_beside_state() { return 0; }
#endif

}  // namespace tidewright
