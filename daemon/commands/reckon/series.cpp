#include <array>

#include "core/water/cautions.hpp"
#include "core/water/membrane_series.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr std::array options{Option{"feed", Unit::ppm, "TDS of the feed of the first membrane",
                                    0.001, 1e6, true, by_solids_meter},
                             Option{"feed", Unit::litres_per_hour, "flow of the feed", 0.001, 1e6,
                                    true, by_bucket_and_clock},
                             Option{"first-recovery", Unit::percent,
                                    "of the first membrane's feed becomes permeate", 0, 99, true},
                             Option{"second-recovery", Unit::percent,
                                    "of the second membrane's feed becomes permeate", 0, 99, true},
                             Option{"first-rejection", Unit::percent,
                                    "of the salt in the first membrane's feed", 0, 100, true},
                             Option{"second-rejection", Unit::percent,
                                    "of the salt in the second membrane's feed", 0, 100, true}};

Outcome reckon_series(const Inputs& inputs) {
  const auto part = [&](const char* percent) { return inputs[percent] / 100; };
  const auto found = water::membranes_in_series(
      {inputs["feed-ppm"]}, {inputs["feed-l-h"]},
      {part("first-recovery-percent"), part("first-rejection-percent")},
      {part("second-recovery-percent"), part("second-rejection-percent")});
  if (!found) return refused(*found.outside());
  Reckoned reckoned{
      {{"permeate_ppm", "permeate of both", found->permeate.value, Unit::ppm, 3},
       {"rejection_percent", "rejection of both", 100 * found->rejection, Unit::percent, 3},
       {"recovery_percent", "recovery of both", 100 * found->recovery, Unit::percent, 3},
       {"concentrate_ppm", "concentrate", found->concentrate.value, Unit::ppm, 2},
       {"first_permeate_ppm", "permeate of the first", found->permeate_first.value, Unit::ppm, 3},
       {"second_feed_ppm", "feed of the second", found->feed_second.value, Unit::ppm, 2},
       {"second_permeate_ppm", "permeate of the second", found->permeate_second.value, Unit::ppm,
        3},
       {"first_permeate_l_h", "from the first", found->permeate_first_flow.value,
        Unit::litres_per_hour, 3},
       {"second_permeate_l_h", "from the second", found->permeate_second_flow.value,
        Unit::litres_per_hour, 3},
       {"concentrate_l_h", "concentrate", found->concentrate_flow.value, Unit::litres_per_hour, 3},
       {"concentrate_per_permeate", "concentrate per permeate", found->concentrate_per_permeate,
        Unit::none, 3}},
      "balance of water and salt; the concentrate of the first feeds the second",
      std::string(membrane_source),
      "the balance itself is exact; recoveries and rejections as typed"};
  reckoned.hints.emplace_back(
      "Equal membranes reject less together than each alone. Which of two is worn the common "
      "permeate cannot say: read each.");
  warn_of("The permeate", water::pure_water_cautions, reckoned);
  return reckoned;
}

}  // namespace

const Quantity series{
    "series", "Two membranes, the second fed with the concentrate of the first",
    "tidewright reckon series --feed-ppm 300 --feed-l-h 40 --first-recovery-percent 25 "
    "--second-recovery-percent 25 --first-rejection-percent 98 --second-rejection-percent 98",
    options, reckon_series};

}  // namespace tidewright::commands::reckon
