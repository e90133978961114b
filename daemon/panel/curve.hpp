// Readings over a time, made few enough to be drawn: of each slice its lowest, highest and last.
// Pure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/instant.hpp"

namespace tidewright::panel {

struct Slice {
  double lowest = 0;
  double highest = 0;
  double last = 0;
};

// What a person told, as it is marked beside the curve.
struct Mark {
  Instant at;
  std::string what;
  std::string who;
};

class Curve {
 public:
  static constexpr std::size_t slices_most = 360;
  static constexpr std::size_t marks_most = 12;

  Curve(Instant from, Instant to) : from_(from), to_(to), slices_(slices_most) {}

  // In any order; what lies outside or is no number is passed over.
  void add(Instant at, double value);
  // The last ones are kept.
  void add(Mark mark);

  Instant from() const { return from_; }
  Instant to() const { return to_; }
  const std::vector<std::optional<Slice>>& slices() const { return slices_; }
  const std::vector<Mark>& marks() const { return marks_; }
  // Over all slices; none if there are no readings.
  std::optional<Slice> whole() const;

 private:
  Instant from_;
  Instant to_;
  std::vector<std::optional<Slice>> slices_;
  std::vector<Mark> marks_;
};

// Round figures, two to six of them, that enclose what lies between.
std::vector<double> round_figures(double lowest, double highest);

}  // namespace tidewright::panel
