#include "core/water/carbon_filter.hpp"

#include <algorithm>

namespace tidewright::water {
namespace {

constexpr Range ratings{"rated litres", "L", 1, 1e7};
constexpr Range challenges{"challenge", "mg/L", 0.1, 10};
constexpr Range deratings{"derating", "", 0.01, 1};
constexpr Range products{"product", "L", 0, 1e6};
constexpr Range recoveries{"recovery", "", 0.01, 1};
constexpr Range daily_feeds{"feed", "L a day", 0.1, 1e6};
constexpr Range disinfectants{"disinfectant", "mg/L", 0.001, 20};
constexpr Range passed{"feed passed", "L", 0, 1e9};
constexpr Range days_used{"days in use", "", 0, 36500};
constexpr Range days_allowed{"days allowed", "", 1, 3650};
constexpr Range tests{"disinfectant behind the carbon", "mg/L", 0, 20};
constexpr Range limits{"disinfectant allowed behind the carbon", "mg/L", 0.01, 1};

}  // namespace

Answer<double> carbon_capacity_grams(const CarbonFilter& filter) {
  if (const auto bad =
          first(outside(ratings, filter.rated.value), outside(challenges, filter.challenge.value),
                outside(deratings, filter.derating))) {
    return *bad;
  }
  return filter.rated.value * filter.challenge.value * filter.derating / 1000;
}

Answer<Litres> feed_of_product(Litres product, double recovery) {
  if (const auto bad = first(outside(products, product.value), outside(recoveries, recovery))) {
    return *bad;
  }
  return product / recovery;
}

Answer<CarbonLife> carbon_life(const CarbonFilter& filter, Litres feed_per_day,
                               MilligramsPerLitre disinfectant) {
  const Answer<double> capacity = carbon_capacity_grams(filter);
  if (!capacity) return *capacity.outside();
  if (const auto bad = first(outside(daily_feeds, feed_per_day.value),
                             outside(disinfectants, disinfectant.value))) {
    return *bad;
  }
  const Litres feed{1000 * *capacity / disinfectant.value};
  return CarbonLife{feed, feed / feed_per_day};
}

Answer<CarbonLeft> carbon_left(const CarbonFilter& filter, const CarbonUse& use) {
  const Answer<CarbonLife> life = carbon_life(filter, use.feed_per_day, use.disinfectant);
  if (!life) return *life.outside();
  const MilligramsPerLitre found = use.found_behind.value_or(MilligramsPerLitre{0});
  if (const auto bad =
          first(outside(passed, use.feed_passed.value), outside(days_used, use.days_in_use),
                outside(days_allowed, use.days_allowed), outside(tests, found.value),
                outside(limits, use.allowed_behind.value))) {
    return *bad;
  }
  if (found > use.allowed_behind) return CarbonLeft{0, CarbonEnd::test};
  const double by_litres = std::max(0.0, (life->feed_litres - use.feed_passed) / use.feed_per_day);
  const double by_calendar = std::max(0.0, use.days_allowed - use.days_in_use);
  return by_calendar < by_litres ? CarbonLeft{by_calendar, CarbonEnd::calendar}
                                 : CarbonLeft{by_litres, CarbonEnd::litres};
}

}  // namespace tidewright::water
