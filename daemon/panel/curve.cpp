#include "daemon/panel/curve.hpp"

#include <algorithm>
#include <cmath>

namespace tidewright::panel {

void Curve::add(Instant at, double value) {
  if (at < from_ || at > to_ || !std::isfinite(value)) return;
  const double share = static_cast<double>((at - from_).count()) /
                       static_cast<double>(std::max<Duration::rep>(1, (to_ - from_).count()));
  const auto index = std::min(
      slices_.size() - 1, static_cast<std::size_t>(share * static_cast<double>(slices_.size())));
  std::optional<Slice>& slice = slices_[index];
  if (!slice) {
    slice = Slice{value, value, value};
  } else {
    *slice = {std::min(slice->lowest, value), std::max(slice->highest, value), value};
  }
}

void Curve::add(Mark mark) {
  if (mark.at < from_ || mark.at > to_) return;
  marks_.push_back(std::move(mark));
  if (marks_.size() > marks_most) marks_.erase(marks_.begin());
}

std::optional<Slice> Curve::whole() const {
  std::optional<Slice> all;
  for (const std::optional<Slice>& slice : slices_) {
    if (!slice) continue;
    if (!all) all = slice;
    *all = {std::min(all->lowest, slice->lowest), std::max(all->highest, slice->highest),
            slice->last};
  }
  return all;
}

std::vector<double> round_figures(double lowest, double highest) {
  const double span = std::max(highest - lowest, std::max(1e-3, std::abs(highest) * 0.02));
  const double rough = span / 4;
  const double power = std::pow(10, std::floor(std::log10(rough)));
  double step = 10 * power;
  for (const double factor : {1.0, 2.0, 5.0}) {
    if (factor * power >= rough) {
      step = factor * power;
      break;
    }
  }
  std::vector<double> figures;
  const long first = std::lround(std::floor(lowest / step));
  const long last = std::max(std::lround(std::ceil(highest / step)), first + 1);
  for (long n = first; n <= last; ++n) figures.push_back(static_cast<double>(n) * step);
  return figures;
}

}  // namespace tidewright::panel
