// How long the numbers of seawater take. Bounds: salinity from conductivity <= 150 ns, its inverse
// <= 2 us.
#include <benchmark/benchmark.h>

#include <array>
#include <cstddef>

#include "core/water/practical_salinity.hpp"
#include "core/water/seawater.hpp"
#include "core/water/specific_gravity.hpp"

namespace {

using namespace tidewright;

// A night of samples about salinity 35 and 25 degrees, so that no call is the same as the last.
constexpr std::size_t samples = 1024;

double sample(std::size_t i) { return 0.5 - static_cast<double>(i % samples) / samples; }

template <class Function>
void over_samples(benchmark::State& state, const Function& function) {
  std::size_t i = 0;
  for (auto _ : state) {
    benchmark::DoNotOptimize(function(sample(i), sample(i * 7)));
    ++i;
  }
}

void practical_salinity(benchmark::State& state) {
  over_samples(state, [](double a, double b) {
    return water::practical_salinity(MillisiemensPerCm{53 + 8 * a}, Celsius{25 + 8 * b});
  });
}
BENCHMARK(practical_salinity);

void practical_salinity_diluted(benchmark::State& state) {
  over_samples(state, [](double a, double b) {
    return water::practical_salinity(MillisiemensPerCm{2 + 2 * a}, Celsius{25 + 8 * b});
  });
}
BENCHMARK(practical_salinity_diluted);

void conductivity(benchmark::State& state) {
  over_samples(state, [](double a, double b) {
    return water::conductivity(PracticalSalinity{35 + 8 * a}, Celsius{25 + 8 * b});
  });
}
BENCHMARK(conductivity);

void conductivity_diluted(benchmark::State& state) {
  over_samples(state, [](double a, double b) {
    return water::conductivity(PracticalSalinity{1 + a}, Celsius{25 + 8 * b});
  });
}
BENCHMARK(conductivity_diluted);

void density_teos10(benchmark::State& state) {
  over_samples(state, [](double a, double b) {
    return water::density_teos10(GramsPerKilogram{35 + 8 * a}, Celsius{25 + 8 * b});
  });
}
BENCHMARK(density_teos10);

void salinity_of_hydrometer(benchmark::State& state) {
  over_samples(state, [](double a, double b) {
    return water::salinity_of_hydrometer(1.025 + 0.01 * a, Celsius{25 + 8 * b},
                                         water::GravityScale::celsius_25_25);
  });
}
BENCHMARK(salinity_of_hydrometer);

void temperature_of_enthalpy(benchmark::State& state) {
  over_samples(state, [](double a, double b) {
    return water::temperature_of_enthalpy(GramsPerKilogram{35 + 8 * a},
                                          JoulesPerKilogram{1e5 + 3e4 * b});
  });
}
BENCHMARK(temperature_of_enthalpy);

}  // namespace

BENCHMARK_MAIN();
