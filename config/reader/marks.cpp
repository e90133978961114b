#include <fmt/format.h>

#include "config/reader/draft.hpp"

namespace tidewright::config {
namespace {

struct Told {
  std::string_view name;
  const Value* value = nullptr;
  Litres at;
};

constexpr std::string_view order =
    "From the lowest: low, start_below, stop_at, full, high_high, volume.";

// The marks that are given and good, in the order in which they must stand.
std::vector<Told> told_marks(const Section& vat) {
  std::vector<Told> marks;
  const auto add = [&](std::string_view name, const Value* value) {
    if (const auto at = litres(vat, value)) marks.push_back({name, value, *at});
  };
  const auto switch_at = [&](std::string_view key) {
    const Section* table = vat.table(key);
    return table == nullptr ? nullptr : table->told("at");
  };
  add("low", vat.told("low"));
  add("start_below", vat.told("start_below"));
  add("stop_at", vat.told("stop_at"));
  add("full", switch_at("full"));
  add("high_high", switch_at("high_high"));
  add("volume", vat.told("volume"));
  return marks;
}

std::string shown(const Told& mark) {
  const bool share = mark.value->measure.unit->dimension == Dimension::share;
  return share ? fmt::format("\"{}\" ({:.4g} L)", mark.value->text, mark.at.value)
               : fmt::format("\"{}\"", mark.value->text);
}

void check_enough(Draft& draft, const Section& vat) {
  const Value* enough = vat.told("enough");
  const Value* stop_at = vat.told("stop_at");
  const auto enough_litres = litres(vat, enough);
  const auto stop_litres = litres(vat, stop_at);
  if (!enough_litres || !stop_litres || *enough_litres <= *stop_litres) return;
  draft.problems.add(enough->at,
                     fmt::format("`enough` is {}, above `stop_at` {}; expected it at or below",
                                 shown({"enough", enough, *enough_litres}),
                                 shown({"stop_at", stop_at, *stop_litres})),
                     "Every fill ends at stop_at: the vat would never be ready.");
}

}  // namespace

void check_marks(Draft& draft) {
  if (draft.vats.empty()) return;
  const Section& vat = draft.vats.front();
  const std::vector<Told> marks = told_marks(vat);
  for (std::size_t i = 0; i < marks.size(); ++i) {
    draft.household.marks.push_back({std::string{marks[i].name}, marks[i].at});
    if (i == 0 || marks[i - 1].at < marks[i].at) continue;
    const bool brim = marks[i].name == "volume";
    const Told& wrong = brim ? marks[i - 1] : marks[i];
    const Told& other = brim ? marks[i] : marks[i - 1];
    draft.problems.add(
        wrong.value->at,
        fmt::format("`{}` is {}; expected it {} `{}`, which is {}", wrong.name, shown(wrong),
                    brim ? "below" : "above", other.name, shown(other)),
        std::string{order});
  }
  check_enough(draft, vat);
}

}  // namespace tidewright::config
