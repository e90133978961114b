// The purifier that fills a vat: sediment, carbon, booster, membrane, resin.
#pragma once

#include <optional>

#include "core/base/instant.hpp"
#include "core/base/reason.hpp"
#include "core/base/units.hpp"

namespace tidewright::room {

// What happens to the water when the driving actuator is OFF.
enum class WaterStopsWith : std::uint8_t { valve, pump, nothing };
enum class OnBreakthrough : std::uint8_t { notify, stop_pump };

// From one local time of day to another, in minutes after midnight; spans it if `from` is later.
struct Hours {
  int from = 0;
  int to = 24 * 60;
  bool hold(Duration time_of_day) const {
    const Duration first = std::chrono::minutes{from}, end = std::chrono::minutes{to};
    const bool begun = time_of_day >= first, over = time_of_day >= end;
    return first <= end ? begun && !over : begun || !over;
  }
};

struct Purifier {
  std::uint8_t vat = 0;
  std::uint8_t driven_by = no_subject;  // actuator index
  WaterStopsWith water_stops_with{};
  LitresPerHour rated;                // product at 25 degrees
  double flow_lowest_credible = 0.5;  // of the temperature-corrected rated flow
  PartsPerMillion notify_at{1};
  PartsPerMillion stop_at{3};
  OnBreakthrough on_breakthrough{};
  Duration product_flush{2 * 60'000};     // product readings count after this much running
  Duration permeate_settles{5 * 60'000};  // permeate readings count after this much running
  Duration judged_over{5 * 60'000};       // product is judged on a median over this time
  Litres judged_litres{2};                //   and this much water, whichever is longer
  // Of unattended fills; where a float switch is all there is, what starts them.
  std::optional<Hours> start_hours;
  Celsius frost_below{4};
  Bars feed_pressure_low{0.3};  // under this the pump runs dry
  Celsius hot_above{35};
  double rejection_low = 0.9;         // of the feed's solids; below: the membrane is told of
  double feed_change = 0.3;           // of the usual feed; beyond: told
  std::optional<Litres> lead_resin;   // mixed resin in the first canister
  PartsPerMillion carbon_dioxide{5};  // mg/L in the feed: it passes the membrane
  Duration resin_told_before{14 * 24 * 3'600'000};
};

}  // namespace tidewright::room
