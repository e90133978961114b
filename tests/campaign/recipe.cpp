#include "tests/campaign/recipe.hpp"

#include <fmt/format.h>

#include <sstream>

#include "core/nights/draw.hpp"

namespace tidewright::campaign {
namespace {

std::string text(const Step& step) {
  if (step.joins == nullptr) return fmt::format("{}", step.seed);
  return fmt::format("{}:{}:{}", step.seed, step.joins->name, step.beside->name);
}

Step step_of(const std::string& text) {
  std::istringstream in(text);
  std::string seed, joins, beside;
  std::getline(in, seed, ':');
  std::getline(in, joins, ':');
  std::getline(in, beside, ':');
  return {std::stoull(seed), nights::fault_kind_named(joins), nights::fault_kind_named(beside)};
}

}  // namespace

std::string text(const Recipe& recipe) {
  std::string all;
  for (const Step& step : recipe) all += (all.empty() ? "" : "+") + text(step);
  return all;
}

Recipe recipe_of(const std::string& text) {
  Recipe recipe;
  std::istringstream in(text);
  for (std::string step; std::getline(in, step, '+');) recipe.push_back(step_of(step));
  return recipe;
}

const support::Household& household_of(const Recipe& recipe,
                                       const std::vector<support::Household>& households) {
  return households[recipe.front().seed % households.size()];
}

nights::Night night_of(const Recipe& recipe, const support::Household& household) {
  nights::Night night = nights::draw_incident(household.name, household.room, recipe.front().seed);
  for (std::size_t i = 1; i < recipe.size(); ++i) {
    const Step& step = recipe[i];
    if (step.joins == nullptr) {
      nights::vary(night, step.seed);
    } else {
      nights::join(night, *step.joins, *step.beside, household.room, step.seed);
    }
  }
  return night;
}

}  // namespace tidewright::campaign
