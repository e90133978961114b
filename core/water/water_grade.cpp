#include "core/water/water_grade.hpp"

#include <array>
#include <cstddef>

namespace tidewright::water {
namespace {

constexpr Range temperatures{"temperature", "°C", 0, 100};

// By 5 degrees from 0.
constexpr std::array<double, 21> stage_1{0.6, 0.8, 0.9, 1.0, 1.1, 1.3, 1.4, 1.5, 1.7, 1.8, 1.9,
                                         2.1, 2.2, 2.4, 2.5, 2.7, 2.7, 2.7, 2.7, 2.9, 3.1};

}  // namespace

MicrosiemensPerCm conductivity_limit(ReagentWater type) {
  switch (type) {
    case ReagentWater::type_1:
      return {0.056};
    case ReagentWater::type_2:
      return {1.0};
    case ReagentWater::type_3:
      return {0.25};
    case ReagentWater::type_4:
      break;
  }
  return {5.0};
}

Answer<MicrosiemensPerCm> conductivity_limit_uncompensated(Celsius temperature) {
  if (const auto bad = outside(temperatures, temperature.value)) return *bad;
  return MicrosiemensPerCm{stage_1[static_cast<std::size_t>(temperature.value / 5)]};
}

}  // namespace tidewright::water
