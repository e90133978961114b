// The habits of the pretend room: its water, its weather, its people, its cheap electronics.
#pragma once

#include "core/base/instant.hpp"
#include "core/base/units.hpp"
#include "core/rehearsal/plug.hpp"
#include "core/rehearsal/weather.hpp"
#include "core/rehearsal/works.hpp"

namespace tidewright::rehearsal {

struct Settings {
  Weather weather;
  WorksSettings works;
  PlugSettings plug;
  Litres top_off_per_day{5};   // a tank loses 1-2 % a day (common practice, no source)
  Litres weekly_change{0};     // drawn by the person on the seventh evening of each week
  double level_noise = 0.002;  // of the vat's capacity
  double messages_lost = 0.002;
  double float_switch_at = 0.92;  // of the vat's capacity
  double high_high_at = 0.985;
};

}  // namespace tidewright::rehearsal
