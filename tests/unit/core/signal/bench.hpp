// A metered room that has started, with everything good, for the tests of one comparison.
#pragma once

#include "tests/support/stage.hpp"

namespace tidewright {

struct SignalBench : support::Stage {
  // The pump runs: it rests for two minutes before its first start.
  SignalBench() : Stage(support::metered_room()) {
    begin();
    wait(std::chrono::minutes{2});
  }

  Why why(room::InstrumentIndex i) const { return signal(i).why; }
  Quality quality(room::InstrumentIndex i) const { return signal(i).quality; }

  // Both gauges say it.
  void hold(double litres) {
    says(support::level, litres);
    says(support::level_twin, litres);
  }
  // The three meters say it; a quarter of the feed is product.
  void flow(double product) {
    says(support::feed_flow, 4 * product);
    says(support::product_flow, product);
    says(support::concentrate_flow, 3 * product);
  }
  // An hour of filling at that flow, the gauges rising by so many litres.
  void fill_an_hour(double product, double risen) {
    const double from = signal(support::level).value;
    flow(product);
    for (int minute = 1; minute <= 60; ++minute) {
      hold(from + risen * minute / 60);
      wait(std::chrono::minutes{1});
    }
  }
  // Fills so until the pump stops, six hours at most.
  void fill_until_off(double product, double risen_per_hour) {
    const double from = signal(support::level).value;
    flow(product);
    for (int minute = 1; minute <= 360 && is_on(); ++minute) {
      hold(from + risen_per_hour * minute / 60);
      wait(std::chrono::minutes{1});
    }
    flow(0);
  }
};

}  // namespace tidewright
