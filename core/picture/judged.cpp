#include "core/picture/judged.hpp"

#include <algorithm>

namespace tidewright::picture {
namespace {

constexpr std::size_t readings_min = 3;

float median(state::Samples samples, std::size_t count) {
  const auto begin = samples.items.begin();
  const auto end = begin + static_cast<std::ptrdiff_t>(count);
  std::sort(begin, end, [](const auto& a, const auto& b) { return a.ppm < b.ppm; });
  const float upper = samples.items[count / 2].ppm;
  return count % 2 == 1 ? upper : (samples.items[count / 2 - 1].ppm + upper) / 2;
}

// Steady is what no sample of a longer stretch falls below.
std::optional<PartsPerMillion> lowest(const state::Samples& samples) {
  if (samples.count < samples.items.size()) return std::nullopt;
  const auto least = std::min_element(samples.items.begin(), samples.items.end(),
                                      [](const auto& a, const auto& b) { return a.ppm < b.ppm; });
  return PartsPerMillion{static_cast<double>(least->ppm)};
}

}  // namespace

std::optional<Judged> judge_samples(const room::Room& room, const state::Samples& samples) {
  const bool metered = room::driving(room).has_value();
  for (std::size_t count = readings_min; count <= samples.count; ++count) {
    const state::Sample& newest = samples.items[0];
    const state::Sample& oldest = samples.items[count - 1];
    const double litres = static_cast<double>(newest.litres - oldest.litres);
    const bool long_enough = newest.at - oldest.at >= room.purifier->judged_over;
    const bool much_enough = !metered || litres >= room.purifier->judged_litres.value;
    if (long_enough && much_enough) {
      return Judged{{static_cast<double>(median(samples, count))}, Litres{litres}, lowest(samples)};
    }
  }
  return std::nullopt;
}

}  // namespace tidewright::picture
