#include <array>

#include "core/nights/invariant.hpp"

namespace tidewright::nights {

extern const Invariant nothing_on_while_forbidden, nothing_starts_too_early, wet_is_answered,
    wet_ends_in_off, off_is_repeated, wet_latches, latch_stays, bypass_is_asked_for, good_is_fresh,
    commands_expire, day_is_limited, attended_run_ends, fill_ends_at_stop, transfer_ends_at_stop,
    heater_is_covered, never_both_on, live_before_start, people_change_no_command,
    shown_is_feedback, older_changes_nothing, clock_moves_no_timer, step_rests, totals_never_fall,
    replay_is_equal, first_cause_is_kept, fills_again;

namespace {

constexpr std::array rows{
    &nothing_on_while_forbidden,
    &nothing_starts_too_early,
    &wet_is_answered,
    &wet_ends_in_off,
    &off_is_repeated,
    &wet_latches,
    &latch_stays,
    &bypass_is_asked_for,
    &good_is_fresh,
    &commands_expire,
    &day_is_limited,
    &attended_run_ends,
    &fill_ends_at_stop,
    &transfer_ends_at_stop,
    &heater_is_covered,
    &never_both_on,
    &live_before_start,
    &people_change_no_command,
    &shown_is_feedback,
    &older_changes_nothing,
    &clock_moves_no_timer,
    &step_rests,
    &totals_never_fall,
    &replay_is_equal,
    &first_cause_is_kept,
    &fills_again,
};

}  // namespace

// In the order of their numbers.
std::span<const Invariant* const> invariants() { return rows; }

}  // namespace tidewright::nights
