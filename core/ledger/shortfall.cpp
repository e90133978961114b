#include "core/ledger/shortfall.hpp"

#include <algorithm>
#include <cmath>
#include <span>

#include "core/ledger/draws.hpp"
#include "core/ledger/flow.hpp"
#include "core/ledger/leak.hpp"
#include "core/ledger/stories.hpp"

namespace tidewright::ledger {
namespace {

// Nothing comes: over so many slices, after so many that still rose. [choices]
constexpr std::size_t stall_shortest = 5, stall_longest = story_longest;
constexpr std::size_t lead_shortest = 8, lead_longest = 28;
constexpr double flowed_before = 0.3;  // of the usual; else it did not come to a stop, it is slow
constexpr double flows_again = 0.5;    // of the usual

// In deviations of the gauge's noise: fewer than one test in three million errs. [choice]
constexpr double beyond_noise = 5;

// How seldom somebody draws by hand, an hour, where the household is calm, and where nobody knows
// yet. [choices]
constexpr double draws_least = 1.0 / (30 * 24);
constexpr double draws_while_unknown = 5.0 / 24;

// Too little: over two hours, of what three fills have taught. [choices]
constexpr std::size_t slow_slices = 40;
constexpr double slow = 0.6;
constexpr double deviations = 4;

std::span<const float> newest(const state::Stretch& stretch, std::size_t count) {
  return std::span{stretch.levels}.subspan(stretch.count - count, count);
}

// A lead rises no faster than is usual: what was poured in is no flow.
Lead lead_of(std::span<const float> levels, double usual, const LevelError& error) {
  const double n = static_cast<double>(levels.size());
  const double slope = -fall(levels, 1, error).rate.value;
  double mean = 0;
  for (const float level : levels) mean += static_cast<double>(level) / n;
  const double risen = std::min(slope, usual);
  return {mean + risen * n / 2, risen};
}

void find_stall(const LevelError& error, Duration slice, double usual, Instant now,
                state::Balance& balance) {
  const state::Stretch& stretch = balance.stretch;
  state::Shortfall& stall = balance.stall;
  const double least = is_known(balance.habit) ? draws_least : draws_while_unknown;
  const DrawsKnown known{std::max(least, draws_an_hour(balance.draws, now)),
                         balance.habit.restless};
  const double variance =
      error.deviation.value * error.deviation.value + error.rounding.value * error.rounding.value;
  for (std::size_t after = stall_shortest; after <= stall_longest; ++after) {
    if (after + lead_shortest > stretch.count) break;
    const std::size_t looked_at = std::min<std::size_t>(stretch.count, after + lead_longest);
    const auto levels = newest(stretch, looked_at);
    const Lead lead = lead_of(levels.first(looked_at - after), usual * hours(slice), error);
    if (lead.slope < flowed_before * usual * hours(slice)) continue;
    const double lasting_h = static_cast<double>(after) * hours(slice);
    const Stories told = stories(levels.last(after), lead, known, lasting_h, variance);
    if (told.stops >= told.drawn) continue;
    const double surely = std::sqrt(told.beyond_doubt / variance);
    if (surely < beyond_noise) continue;
    stall.found = true;
    stall.rate = {told.rate / hours(slice)};
    stall.usual = {lead.slope / hours(slice)};
    stall.missing = {(lead.slope - told.rate) * static_cast<double>(after)};
    stall.lasting = static_cast<int>(after) * slice;
    stall.deviations = static_cast<float>(surely);
    return;
  }
}

// It is over when the newest slices rise again.
void end_stall(const LevelError& error, Duration slice, double usual, const state::Stretch& stretch,
               state::Shortfall& stall) {
  if (!stall.found || stretch.count < lead_shortest) return;
  const Fall seen = fall(newest(stretch, lead_shortest), hours(slice), error);
  if (-seen.rate.value - 2 * seen.error.value > flows_again * usual) stall = {};
}

void judge_slow(const LevelError& error, Duration slice, double usual,
                const state::Stretch& stretch, state::Shortfall& shortfall) {
  if (stretch.count < slow_slices) return;
  const Fall seen = fall(newest(stretch, slow_slices), hours(slice), error);
  const double rate = -seen.rate.value;
  const Duration lasting = static_cast<int>(slow_slices) * slice;
  if (rate - 2 * seen.error.value > slow * usual) {
    shortfall = {};
  } else if (rate + deviations * seen.error.value + seen.bound.value < slow * usual) {
    shortfall = {
        .found = true,
        .rate = {rate},
        .usual = {usual},
        .missing = {(usual - rate) * hours(lasting)},
        .lasting = lasting,
        .deviations = static_cast<float>((usual - rate - seen.bound.value) / seen.error.value)};
  }
}

}  // namespace

void post_shortfall(const Sources& from, const LevelError& error, Duration slice,
                    const state::LearnedFlow& learned, state::Balance& balance) {
  const state::Stretch& stretch = balance.stretch;
  const auto& stop_at = from.room.vat->stop_at;
  if (stop_at && stretch.held >= room::float_closes_from * *stop_at) {
    balance.stall = {};
    return;
  }
  const Celsius temperature = water_temperature(from.room, from.signals).value;
  const double expected = flow_expected(from.room, temperature).value;
  const bool known = learned.fills >= state::learned_from;
  const double usual = expected * (known ? learned.share : 1);
  if (usual <= 0) return;
  end_stall(error, slice, usual, stretch, balance.stall);
  if (!balance.stall.found) find_stall(error, slice, usual, from.circumstances.now, balance);
  if (known && !balance.stall.found) judge_slow(error, slice, usual, stretch, balance.slow);
}

}  // namespace tidewright::ledger
