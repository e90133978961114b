#include "core/ledger/shortfall.hpp"

#include <algorithm>
#include <cmath>
#include <span>

#include "core/ledger/flow.hpp"

namespace tidewright::ledger {
namespace {

// One slice in 30,000 errs beyond four deviations, and the level must then be off by half the flow
// besides: the null here is a flow as usual, and that lies twice as far away. [choice]
constexpr double deviations = 4;
constexpr double near_stop = 0.95;  // as procedure/full has it

// Nothing: less than half of what came before, over so many slices after so many.
constexpr std::size_t stall_shortest = 3, stall_longest = 24;
constexpr std::size_t lead_shortest = 6, lead_longest = 12;
constexpr double stalled = 0.5;
constexpr double flowed_before = 0.3;  // of the usual; else it did not come to a stop, it is slow

// Too little: over two hours, of what three fills have taught. [choices]
constexpr std::size_t slow_slices = 24;
constexpr double slow = 0.6;

std::span<const float> newest(const state::Stretch& stretch, std::size_t count) {
  return std::span{stretch.levels}.subspan(stretch.count - count, count);
}

struct Rise {
  double before = 0;  // L/h before the place looked at, no more than usual
  double rate = 0;    // L/h since
  double error = 0;   // standard deviation
  double bound = 0;   // what the gauge's steps may feign
};

// How fast the level has risen over the last `after` slices, from where the slices before them had
// led it. A level that is known there tells a stall far sooner than its slope alone would.
Rise rise_since(std::span<const float> levels, std::size_t after, double usual, double slice_hours,
                const LevelError& error) {
  const std::size_t from = levels.size() - after;
  const Fall seen = fall(levels.first(from), slice_hours, error);
  const double slope = std::min(-seen.rate.value, usual);
  const double n = static_cast<double>(from);
  double start = 0;
  for (std::size_t i = 0; i < from; ++i) {
    const double ahead = (n - static_cast<double>(i) - 0.5) * slice_hours;
    start += (static_cast<double>(levels[i]) + slope * ahead) / n;
  }
  double tt = 0, t_sum = 0, ty = 0;
  for (std::size_t i = from; i < levels.size(); ++i) {
    const double t = (static_cast<double>(i - from) + 0.5) * slice_hours;
    tt += t * t;
    t_sum += t;
    ty += t * (static_cast<double>(levels[i]) - start);
  }
  const double by_start = t_sum / tt;
  // The end of a fitted line is known to twice the deviation of a mean of as many.
  return {slope, ty / tt, error.deviation.value * std::sqrt(1 / tt + 4 * by_start * by_start / n),
          4 * error.rounding.value * by_start};
}

void find_stall(const LevelError& error, double slice_hours, double usual,
                const state::Stretch& stretch, state::Shortfall& stall) {
  for (std::size_t after = stall_shortest; after <= stall_longest; ++after) {
    if (after + lead_shortest > stretch.count) break;
    const std::size_t looked_at = std::min<std::size_t>(stretch.count, after + lead_longest);
    const Rise rise = rise_since(newest(stretch, looked_at), after, usual, slice_hours, error);
    if (rise.before < flowed_before * usual) continue;
    if (rise.rate + deviations * rise.error + rise.bound >= stalled * rise.before) continue;
    const double lasting_hours = static_cast<double>(after) * slice_hours;
    stall.found = true;
    stall.rate = {rise.rate};
    stall.usual = {rise.before};
    stall.missing = {(rise.before - rise.rate) * lasting_hours};
    stall.lasting = Duration{static_cast<Duration::rep>(lasting_hours * 3.6e6)};
    stall.deviations = static_cast<float>((rise.before - rise.rate - rise.bound) / rise.error);
    return;
  }
}

// It is over when the newest slices rise again.
void end_stall(const LevelError& error, double slice_hours, double usual,
               const state::Stretch& stretch, state::Shortfall& stall) {
  if (!stall.found || stretch.count < lead_shortest) return;
  const Fall seen = fall(newest(stretch, lead_shortest), slice_hours, error);
  if (-seen.rate.value - 2 * seen.error.value > stalled * usual) stall = {};
}

void judge_slow(const LevelError& error, double slice_hours, double usual,
                const state::Stretch& stretch, state::Shortfall& shortfall) {
  if (stretch.count < slow_slices) return;
  const Fall seen = fall(newest(stretch, slow_slices), slice_hours, error);
  const double rate = -seen.rate.value;
  const double over_hours = slow_slices * slice_hours;
  if (rate - 2 * seen.error.value > slow * usual) {
    shortfall = {};
  } else if (rate + deviations * seen.error.value + seen.bound.value < slow * usual) {
    shortfall = {
        .found = true,
        .rate = {rate},
        .usual = {usual},
        .missing = {(usual - rate) * over_hours},
        .lasting = Duration{static_cast<Duration::rep>(over_hours * 3.6e6)},
        .deviations = static_cast<float>((usual - rate - seen.bound.value) / seen.error.value)};
  }
}

}  // namespace

void post_shortfall(const Sources& from, const LevelError& error, Duration slice,
                    const state::LearnedFlow& learned, state::Balance& balance) {
  const state::Stretch& stretch = balance.stretch;
  const auto& stop_at = from.room.vat->stop_at;
  if (stop_at && stretch.held >= near_stop * *stop_at) {
    balance.stall = {};
    return;
  }
  const Celsius temperature = water_temperature(from.room, from.signals).value;
  const double expected = flow_expected(from.room, temperature).value;
  const bool known = learned.fills >= state::learned_from;
  const double usual = expected * (known ? learned.share : 1);
  if (usual <= 0) return;
  const double slice_hours = hours(slice);
  end_stall(error, slice_hours, usual, stretch, balance.stall);
  if (!balance.stall.found) find_stall(error, slice_hours, usual, stretch, balance.stall);
  if (known && !balance.stall.found) {
    judge_slow(error, slice_hours, usual, stretch, balance.slow);
  }
}

}  // namespace tidewright::ledger
