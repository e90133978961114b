#include "core/signal/compare.hpp"

#include "core/signal/balance.hpp"
#include "core/signal/flat_line.hpp"
#include "core/signal/gauge_and_float.hpp"
#include "core/signal/gauge_and_flow.hpp"
#include "core/signal/power_and_flow.hpp"
#include "core/signal/twins.hpp"
#include "core/signal/water_meter.hpp"

namespace tidewright::signal {

void compare(const Beside& beside, const Event& event, state::Signals& signals,
             state::Comparison& comparison, Wake& wake) {
  const Instant now = beside.circumstances.now;
  // What happened while the daemon was away was not seen.
  if (std::holds_alternative<Started>(event.what)) begin_anew(comparison, now);
  const Duration elapsed = now - comparison.compared;
  comparison.compared = now;
  watch_flat_lines(beside, elapsed, signals, wake);
  compare_twins(beside, signals, wake);
  compare_gauge_with_float(beside, signals);
  book_water(beside, signals, comparison);
  compare_gauge_with_flow(beside, signals, comparison, wake);
  balance_flows(beside, signals, comparison);
  compare_power_with_flow(beside, signals, comparison, wake);
}

}  // namespace tidewright::signal
