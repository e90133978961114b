#include "core/ledger/draws.hpp"

#include <algorithm>
#include <cmath>

namespace tidewright::ledger {
namespace {

// Of the vat. [choices]
constexpr double large = 0.05;
constexpr double usual_least = 0.1;
constexpr double usual_while_unknown = 0.4;
constexpr int known_from = 3;
constexpr double beyond_largest = 2;
constexpr double learned_beyond = 1.25;
constexpr double remembered = 0.99;  // of the largest, at each large one
constexpr Duration frequency_forgotten = std::chrono::hours{7 * 24};

void learn(const room::Vat& vat, state::Draws& draws) {
  if (draws.litres < large * vat.capacity) return;
  const Litres taught = std::min(draws.litres, learned_beyond * draw_usual(vat, draws));
  draws.largest = std::max(taught, remembered * draws.largest);
  if (draws.known < known_from) ++draws.known;
}

}  // namespace

double draws_an_hour(const state::Draws& draws, Instant now) {
  return draws.an_hour * std::exp(-seconds(now - draws.began) / seconds(frequency_forgotten));
}

void post_draws(const LevelMove& move, LitresPerHour habit, Instant now, const room::Vat& vat,
                state::Draws& draws) {
  if (move.fallen <= Litres{0}) return;
  if (now - draws.last >= between_draws) {
    learn(vat, draws);
    const double by_habit_l = habit.value * hours(now - draws.last);
    draws.an_hour = draws_an_hour(draws, now);
    if (move.fallen.value > 2 * by_habit_l) draws.an_hour += 1 / hours(frequency_forgotten);
    draws.litres = Litres{0};
    draws.began = now;
  }
  draws.litres += move.fallen;
  draws.last = now;
}

Litres draw_usual(const room::Vat& vat, const state::Draws& draws) {
  if (draws.known < known_from) return usual_while_unknown * vat.capacity;
  return std::max(usual_least * vat.capacity, beyond_largest * draws.largest);
}

}  // namespace tidewright::ledger
