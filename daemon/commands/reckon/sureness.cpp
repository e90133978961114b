#include "daemon/commands/reckon/sureness.hpp"

#include <cmath>
#include <utility>

#include "core/water/uncertainty.hpp"
#include "daemon/commands/reckon/known.hpp"

namespace tidewright::commands::reckon {
namespace {

// The same result as `like` with one input moved; none where there is no such answer.
std::optional<double> moved_result(const Outcome& outcome, const Result& like) {
  const auto* reckoned = std::get_if<Reckoned>(&outcome);
  if (!reckoned) return std::nullopt;
  for (const Result& result : reckoned->results) {
    const auto* value = std::get_if<double>(&result.value);
    if (value && result.key == like.key) return *value;
  }
  return std::nullopt;
}

Outcome moved(const Quantity& quantity, const Option& option, const Inputs& inputs, double by) {
  const std::string key = option_key(option);
  const double value = inputs[key] + by;
  if (value < option.low || value > option.high) return missing("", "", "");
  Inputs all = inputs;
  all.set(key, value);
  return quantity.reckon(all);
}

using Squares = std::vector<std::optional<double>>;

// Adds what moving one input does to each result. Whether it does anything.
bool move(const Quantity& quantity, const Option& option, const Inputs& inputs,
          const Reckoned& reckoned, Squares& squares) {
  const double by = water::rectangular(limit_of(option, inputs));
  if (by == 0) return false;
  bool moves = false;
  const Outcome above = moved(quantity, option, inputs, by);
  const Outcome below = moved(quantity, option, inputs, -by);
  for (std::size_t i = 0; i < squares.size(); ++i) {
    const Result& result = reckoned.results[i];
    const auto* middle = std::get_if<double>(&result.value);
    if (!middle || !squares[i]) continue;
    const auto part =
        water::moved_by(*middle, moved_result(above, result), moved_result(below, result));
    moves = moves || !part || *part != 0;
    squares[i] = part ? std::optional(*squares[i] + *part * *part) : std::nullopt;
  }
  return moves;
}

// Inputs that are known alike are named together: "volume-l, other-volume-l to 1 %".
std::string basis(const std::vector<std::pair<std::string, std::string>>& known) {
  std::string text;
  for (std::size_t i = 0; i < known.size(); ++i) {
    bool said = false;
    for (std::size_t before = 0; before < i; ++before) {
      said = said || known[before].second == known[i].second;
    }
    if (said) continue;
    std::string names = known[i].first;
    for (std::size_t later = i + 1; later < known.size(); ++later) {
      if (known[later].second == known[i].second) names += ", " + known[later].first;
    }
    text += (text.empty() ? "" : "; ") + names + " " + known[i].second;
  }
  return text;
}

}  // namespace

void add_sureness(const Quantity& quantity, const Inputs& inputs, Reckoned& reckoned) {
  Squares squares(reckoned.results.size(), 0.0);
  std::vector<std::pair<std::string, std::string>> known;
  for (const Option& option : quantity.options) {
    const bool used = inputs.has(option_key(option)) || option.otherwise;
    if (option.known.exactly() || !used) continue;
    if (move(quantity, option, inputs, reckoned, squares)) {
      known.emplace_back(option_key(option), words(option, inputs));
    }
  }
  bool added = false;
  for (std::size_t i = 0; i < squares.size(); ++i) {
    Result& result = reckoned.results[i];
    if (result.uncertainty || !squares[i] || *squares[i] == 0) continue;
    result.uncertainty = water::coverage_factor * std::sqrt(*squares[i]);
    added = true;
  }
  if (!added) return;
  reckoned.sureness = "± is k = 2, about 95 %, for " + basis(known) +
                      (reckoned.sureness.empty() ? "" : "; " + reckoned.sureness);
}

}  // namespace tidewright::commands::reckon
