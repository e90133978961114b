// How long one step() takes in a room with everything in it, through a day on which everything
// happens. Printed besides the mean: the median over all steps, and the worst single step (of each
// event the best of the passes, so that the machine's own interruptions do not count).
// Bounds (docs): median at most 1 us, worst at most 100 us.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>
#include <vector>

#include "core/step.hpp"
#include "tests/support/day.hpp"
#include "tests/support/rooms.hpp"

namespace {

using namespace tidewright;

double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

void step_through_a_day(benchmark::State& run) {
  using Clock = std::chrono::steady_clock;
  const room::Room room = support::full_room();
  const std::vector<Event> day = support::eventful_day(room);
  std::vector<double> best(day.size(), 1e12);  // nanoseconds
  for ([[maybe_unused]] auto pass : run) {
    State state;
    Effects effects;
    for (std::size_t i = 0; i < day.size(); ++i) {
      const Clock::time_point before = Clock::now();
      benchmark::DoNotOptimize(step(room, state, day[i], effects));
      const std::chrono::duration<double, std::nano> taken = Clock::now() - before;
      best[i] = std::min(best[i], taken.count());
    }
  }
  run.SetItemsProcessed(run.iterations() * static_cast<std::int64_t>(day.size()));
  run.counters["events"] = static_cast<double>(day.size());
  run.counters["median_ns"] = median(best);
  run.counters["worst_ns"] = *std::max_element(best.begin(), best.end());
}
BENCHMARK(step_through_a_day)->Unit(benchmark::kMillisecond)->MinTime(2);

}  // namespace

BENCHMARK_MAIN();
