#include "config/reader/nearest.hpp"

#include <algorithm>
#include <vector>

namespace tidewright::config {
namespace {

using Row = std::vector<std::size_t>;

// Optimal string alignment distance: Levenshtein's, with the swap of two neighbours as one step.
// Row by row over a table whose [i][j] compares the first i letters of a with the first j of b.
std::size_t distance(std::string_view a, std::string_view b) {
  std::vector<Row> table(a.size() + 1, Row(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) table[i][0] = i;
  for (std::size_t j = 0; j <= b.size(); ++j) table[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t changed = table[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      table[i][j] = std::min({table[i - 1][j] + 1, table[i][j - 1] + 1, changed});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        table[i][j] = std::min(table[i][j], table[i - 2][j - 2] + 1);
      }
    }
  }
  return table[a.size()][b.size()];
}

}  // namespace

std::string_view nearest(std::string_view written, std::span<const std::string_view> candidates) {
  constexpr std::size_t longest_word = 64;
  if (written.size() > longest_word) return {};
  std::string_view best;
  std::size_t fewest = std::clamp<std::size_t>(written.size() / 3, 1, 3) + 1;
  for (const std::string_view candidate : candidates) {
    const std::size_t steps = distance(written, candidate);
    if (steps < fewest) {
      fewest = steps;
      best = candidate;
    }
  }
  return best;
}

}  // namespace tidewright::config
