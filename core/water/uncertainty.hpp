// How sure a computed number is: the first-order law of propagation, JCGM 100:2008 (GUM) section
// 5.1.2, for uncorrelated inputs.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <optional>

namespace tidewright::water {

struct Estimate {
  double value = 0;
  double standard_uncertainty = 0;  // same unit as the value, >= 0
};

// Coverage factor of every expanded uncertainty that a person sees: about 95 %, GUM section 6.2.
inline constexpr double coverage_factor = 2;

// A limit +-half_width with nothing more known has a rectangular distribution: GUM section 4.3.7.
inline double rectangular(double half_width) { return half_width / std::sqrt(3.0); }

// How far an answer moves with one input's standard uncertainty: to both sides, as GUM section
// 5.1.3 note 2 has it, or to the one side that has an answer, at an end of a range. None if neither
// has.
inline std::optional<double> moved_by(double middle, std::optional<double> above,
                                      std::optional<double> below) {
  if (above && below) return (*above - *below) / 2;
  if (above) return *above - middle;
  return below ? std::optional(middle - *below) : std::nullopt;
}

// Standard uncertainty of f(inputs), in the unit of f. `f` takes std::array<double, N> and answers
// std::optional<double>. None if f answers nothing at the inputs, or on neither side of one of
// them.
template <std::size_t N, class Function>
std::optional<double> standard_uncertainty(const Function& f,
                                           const std::array<Estimate, N>& inputs) {
  std::array<double, N> at{};
  for (std::size_t i = 0; i < N; ++i) at[i] = inputs[i].value;
  const std::optional<double> middle = f(at);
  if (!middle) return std::nullopt;
  double squares = 0;
  for (std::size_t i = 0; i < N; ++i) {
    if (inputs[i].standard_uncertainty == 0) continue;
    std::array<double, N> moved = at;
    moved[i] = at[i] + inputs[i].standard_uncertainty;
    const std::optional<double> above = f(moved);
    moved[i] = at[i] - inputs[i].standard_uncertainty;
    const std::optional<double> below = f(moved);
    const std::optional<double> part = moved_by(*middle, above, below);
    if (!part) return std::nullopt;
    squares += *part * *part;
  }
  const double combined = std::sqrt(squares);
  return std::isfinite(combined) ? std::optional(combined) : std::nullopt;
}

}  // namespace tidewright::water
