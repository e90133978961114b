#include "core/ledger/shortfall.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

#include "core/ledger/draws.hpp"
#include "core/ledger/flow.hpp"
#include "core/ledger/leak.hpp"

namespace tidewright::ledger {
namespace {

// Nothing comes: over so many slices, after so many that still rose. [choices]
constexpr std::size_t stall_shortest = 5, stall_longest = 20;
constexpr std::size_t lead_shortest = 8, lead_longest = 28;
constexpr double flowed_before = 0.3;  // of the usual; else it did not come to a stop, it is slow
constexpr double flows_again = 0.5;    // of the usual

// In deviations of the gauge's noise: fewer than one test in three million errs. [choice]
constexpr double beyond_noise = 5;

// How seldom each story happens, an hour: a float sticks or a filter blocks while it runs; somebody
// draws by hand where the household is calm, and where nobody knows yet. [choices]
constexpr double sticks = 1.0 / 1000;
constexpr double draws_least = 1.0 / (30 * 24);
constexpr double draws_while_unknown = 5.0 / 24;

// Too little: over two hours, of what three fills have taught. [choices]
constexpr std::size_t slow_slices = 40;
constexpr double slow = 0.6;
constexpr double deviations = 4;

std::span<const float> newest(const state::Stretch& stretch, std::size_t count) {
  return std::span{stretch.levels}.subspan(stretch.count - count, count);
}

using Sums = std::array<double, stall_longest + 1>;

// The levels up to a place, as a line that is drawn on beyond it.
struct Lead {
  double level = 0;  // at the place
  double slope = 0;  // litres a slice
};

// A lead rises no faster than is usual: what was poured in is no flow.
Lead lead_of(std::span<const float> levels, double usual, const LevelError& error) {
  const double n = static_cast<double>(levels.size());
  const double slope = -fall(levels, 1, error).rate.value;
  double mean = 0;
  for (const float level : levels) mean += static_cast<double>(level) / n;
  const double risen = std::min(slope, usual);
  return {mean + risen * n / 2, risen};
}

// What a story that happens so often an hour must explain, in variances, to be the likelier one:
// twice the logarithm of its chance in the time looked at.
double cost(double an_hour, double hours) { return -2 * std::log(std::min(1.0, an_hour * hours)); }

// How often draws are known to happen: the seen ones by their number; of those too small to be seen
// one by one, the restlessness is the litres of each, squared, an hour.
struct DrawsKnown {
  double seen;      // an hour
  double restless;  // L2/h
  double hours;     // looked at
  double variance;  // of a level

  // In litres squared, as the stories are.
  double cost_of(double litres) const {
    return variance * cost(std::max(seen, restless / (litres * litres)), hours);
  }
};

// How badly three stories tell the levels after a lead, as sums of squares with what each must
// explain beyond the others: it flows on as before; it came to a stop; it flows on, but somebody
// drew water, once or twice.
struct Stories {
  double flows = 0;
  double stops = 0;
  double drawn = 0;
  double rate = 0;  // litres a slice since the lead
};

// What a level lower by one draw, or by two, makes of `flows`; `sums` of how far each level is off.
double with_draws(double flows, const Sums& sums, std::size_t count, const DrawsKnown& known) {
  double least = flows;
  for (std::size_t first = 0; first < count; ++first) {
    for (std::size_t second = first + 1; second <= count; ++second) {
      const auto between = static_cast<double>(second - first);
      const double one = (sums[first] - sums[second]) / between;
      if (one <= 0) continue;
      double told = flows - between * one * one + known.cost_of(one);
      if (second < count) {
        const auto rest = static_cast<double>(count - second);
        const double both = (sums[second] - sums[count]) / rest;
        if (both <= one) continue;
        told += known.cost_of(both - one) - rest * both * both;
      }
      least = std::min(least, told);
    }
  }
  return least;
}

Stories stories(std::span<const float> after, const Lead& lead, const DrawsKnown& known) {
  Stories told;
  Sums sums{};
  double tt = 0, ty = 0;
  for (std::size_t i = 0; i < after.size(); ++i) {
    const double t = static_cast<double>(i) + 0.5;
    const double rise = static_cast<double>(after[i]) - lead.level;
    const double off = rise - lead.slope * t;
    told.flows += off * off;
    told.stops += rise * rise;
    sums[i + 1] = sums[i] + off;
    tt += t * t;
    ty += t * rise;
  }
  told.drawn = with_draws(told.flows, sums, after.size(), known);
  told.rate = ty / tt;
  return told;
}

void find_stall(const LevelError& error, Duration slice, double usual, Instant now,
                state::Balance& balance) {
  const state::Stretch& stretch = balance.stretch;
  state::Shortfall& stall = balance.stall;
  const double least = is_known(balance.habit) ? draws_least : draws_while_unknown;
  const double seen = std::max(least, draws_an_hour(balance.draws, now));
  const double variance =
      error.deviation.value * error.deviation.value + error.rounding.value * error.rounding.value;
  for (std::size_t after = stall_shortest; after <= stall_longest; ++after) {
    if (after + lead_shortest > stretch.count) break;
    const std::size_t looked_at = std::min<std::size_t>(stretch.count, after + lead_longest);
    const auto levels = newest(stretch, looked_at);
    const Lead lead = lead_of(levels.first(looked_at - after), usual * hours(slice), error);
    if (lead.slope < flowed_before * usual * hours(slice)) continue;
    const double looked_at_h = static_cast<double>(after) * hours(slice);
    const DrawsKnown known{seen, balance.habit.restless, looked_at_h, variance};
    const Stories told = stories(levels.last(after), lead, known);
    if (told.stops + variance * cost(sticks, looked_at_h) >= told.drawn) continue;
    const double surely = std::sqrt((told.flows - told.stops) / variance);
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
