// Carbon in front of the membrane: it takes chlorine or chloramine out, which would destroy the
// membrane. All feed passes it, permeate and concentrate together, so it wears two to four times
// as fast as the litres of product say.
#pragma once

#include <optional>

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

// The rating is litres at a challenge: NSF/ANSI 42 tests free chlorine with 2 mg/L and chloramine
// with 3 mg/L (from memory). Chloramine needs far more carbon than chlorine, or a catalytic one,
// and has a rating of its own; a rating for chlorine says nothing of it.
struct CarbonFilter {
  Litres rated;                  // 1 to 1e7
  MilligramsPerLitre challenge;  // 0.1 to 10
  double derating = 0.5;         // what of the rating is relied upon, 0.01 to 1: common practice
};

// What the filter can take away, in grams of chlorine. Error: a factor of 2; therefore the test.
Answer<double> carbon_capacity_grams(const CarbonFilter& filter);

// Litres of feed that pass for so much product. Range: product 0 to 1e6, recovery 0.01 to 1.
Answer<Litres> feed_of_product(Litres product, double recovery);

struct CarbonLife {
  Litres feed_litres;
  double days;
};
// Of a fresh filter. Range: feed 0.1 to 1e6 L a day, disinfectant (as chlorine) 0.001 to 20 mg/L.
Answer<CarbonLife> carbon_life(const CarbonFilter& filter, Litres feed_per_day,
                               MilligramsPerLitre disinfectant);

// What has happened to a filter since it was fitted.
struct CarbonUse {
  Litres feed_passed;
  Litres feed_per_day;
  MilligramsPerLitre disinfectant;  // in the feed, free or combined, as the filter's challenge
  double days_in_use;
  double days_allowed;                             // by the calendar, 1 to 3650
  std::optional<MilligramsPerLitre> found_behind;  // by the last test behind the carbon
  MilligramsPerLitre allowed_behind{0.1};          // FilmTec data sheet 45-D01511-en, free chlorine
};

enum class CarbonEnd { litres, calendar, test };

struct CarbonLeft {
  double days;  // 0: change it now
  CarbonEnd by;
};
// The earliest of the three. A test that finds too much ends it at once; a test that finds nothing
// prolongs nothing. The calendar alone destroys membranes. Range: as above, feed passed 0 to 1e9 L,
// days in use 0 to 36500, test 0 to 20 mg/L, allowed 0.01 to 1.
Answer<CarbonLeft> carbon_left(const CarbonFilter& filter, const CarbonUse& use);

}  // namespace tidewright::water
