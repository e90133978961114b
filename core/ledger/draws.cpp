#include "core/ledger/draws.hpp"

#include <algorithm>

namespace tidewright::ledger {
namespace {

// Of the vat. [choices]
constexpr double large = 0.05;
constexpr double usual_least = 0.1;
constexpr double usual_while_unknown = 0.4;
constexpr std::size_t known_from = 3;
constexpr double beyond_largest = 1.5;
constexpr double learned_beyond = 1.25;

void learn(const room::Vat& vat, state::Draws& draws) {
  if (draws.litres < large * vat.capacity) return;
  const Litres taught = std::min(draws.litres, learned_beyond * draw_usual(vat, draws));
  std::shift_right(draws.before.begin(), draws.before.end(), 1);
  draws.before[0] = static_cast<float>(taught.value);
}

}  // namespace

void post_draws(const LevelMove& move, Instant now, const room::Vat& vat, state::Draws& draws) {
  if (move.fallen <= Litres{0}) return;
  if (now - draws.last >= between_draws) {
    learn(vat, draws);
    draws.litres = Litres{0};
    draws.began = now;
  }
  draws.litres += move.fallen;
  draws.last = now;
}

Litres draw_usual(const room::Vat& vat, const state::Draws& draws) {
  if (draws.before[known_from - 1] <= 0) return usual_while_unknown * vat.capacity;
  const float largest = *std::max_element(draws.before.begin(), draws.before.end());
  return std::max(usual_least * vat.capacity,
                  Litres{beyond_largest * static_cast<double>(largest)});
}

}  // namespace tidewright::ledger
