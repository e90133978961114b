#include "core/picture/resin.hpp"

#include <algorithm>

#include "core/water/resin.hpp"

namespace tidewright::picture {
namespace {

using namespace std::chrono_literals;

// Of the mixed bed, and the share of it that is had before the product rises: common practice, as
// `reckon resin` takes them.
constexpr double cation_eq_per_litre = 0.7;
constexpr double anion_eq_per_litre = 0.6;
constexpr double utilisation = 0.8;

constexpr Litres litres_min{10};
constexpr Duration pace_known_after = 3 * 24h;

struct Side {
  double used = 0;
  std::optional<Litres> left;
};

Side side(double fresh_eq, double used_eq, Litres passed) {
  const auto left = water::litres_left(fresh_eq, used_eq,
                                       MilliequivalentsPerLitre{1000 * used_eq / passed.value});
  return {used_eq / fresh_eq, left ? std::optional{*left} : std::nullopt};
}

}  // namespace

std::optional<ResinForecast> resin_forecast(const room::Room& room, const state::Ledger& ledger,
                                            Instant now) {
  const state::ResinCharge& charge = ledger.resin;
  if (!room.purifier || !room.purifier->lead_resin || charge.passed < litres_min) {
    return std::nullopt;
  }
  const double usable_litres = room.purifier->lead_resin->value * utilisation;
  const Side cation = side(usable_litres * cation_eq_per_litre, charge.cation_eq, charge.passed);
  const Side anion = side(usable_litres * anion_eq_per_litre, charge.anion_eq, charge.passed);
  const Side& first = cation.used > anion.used ? cation : anion;
  if (!first.left) return std::nullopt;
  ResinForecast forecast{*first.left, first.used, std::nullopt};
  const Duration since = now - ledger.resin_changed;
  if (since >= pace_known_after) {
    forecast.days = *first.left / charge.passed * hours(since) / 24;
  }
  return forecast;
}

}  // namespace tidewright::picture
