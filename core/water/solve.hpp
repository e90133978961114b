// The inverse of a monotone function between two brackets. Used by every inverse of this folder.
#pragma once

#include <algorithm>
#include <cmath>
#include <optional>

namespace tidewright::water {

struct Bracket {
  double low;
  double high;
};

// The x in `bracket` at which f(x) = wanted, to within `tolerance` of x; none if `wanted` is not
// between f(low) and f(high). Requires f continuous and monotone there, and tolerance > 0.
// Regula falsi in the Illinois form (Dowell & Jarratt 1971, BIT 11:168-174); every third step
// halves the bracket, so that no shape of f makes it slow: at most 3 log2(width / tolerance) calls.
template <class Function>
std::optional<double> solve(const Function& f, double wanted, Bracket bracket, double tolerance) {
  double a = bracket.low;
  double b = bracket.high;
  double fa = f(a) - wanted;
  double fb = f(b) - wanted;
  if (fa == 0) return a;
  if (fb == 0) return b;
  if (!(fa * fb < 0)) return std::nullopt;
  int kept = 0;  // the end that the last step left alone: -1 low, 1 high
  for (int step = 1; b - a > tolerance && step < 300; ++step) {
    // Half a tolerance inside the bracket: a root at its very edge is stepped over, not crept up
    // to.
    const double inside = std::min(tolerance, b - a) / 2;
    const double middle = a + (b - a) / 2;
    const double chord = a + (b - a) * (fa / (fa - fb));
    const double x = step % 3 == 0 ? middle : std::clamp(chord, a + inside, b - inside);
    const double fx = f(x) - wanted;
    if (fx == 0) return x;
    if ((fx < 0) == (fa < 0)) {
      a = x;
      fa = fx;
      if (kept == 1) fb /= 2;
      kept = 1;
    } else {
      b = x;
      fb = fx;
      if (kept == -1) fa /= 2;
      kept = -1;
    }
  }
  return a + (b - a) / 2;
}

}  // namespace tidewright::water
