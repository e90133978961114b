// How many litres stand in a vessel at a depth, and how deep so many litres stand. All dimensions
// are inside ones; exact for the shape, and as good as the tape measure: 1 % of a diameter is 2 %
// of the litres. A vessel that bulges is better measured, bucket by bucket: MeasuredTable.
//
// Range everywhere: dimensions 0.001 to 100 m, 1e6 L. Source: solid geometry.
#pragma once

#include <variant>

#include "core/base/bounded.hpp"
#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

struct UprightCylinder {
  Metres radius;
  Metres height;
};

// A bucket or a barrel that widens, or narrows, evenly.
struct TruncatedCone {
  Metres bottom_radius;
  Metres top_radius;
  Metres height;
};

struct Box {
  Metres length;
  Metres width;
  Metres height;
};

// On its side, with flat ends.
struct LyingCylinder {
  Metres radius;
  Metres length;
};

// What was measured, from the lowest point up: depth and volume both rise from point to point; in
// between, a straight line.
struct MeasuredTable {
  struct Point {
    Metres depth;
    Litres volume;
  };
  Bounded<Point, 32> points;  // 2 or more
};

using VesselShape = std::variant<UprightCylinder, TruncatedCone, Box, LyingCylinder, MeasuredTable>;

// Refused if a dimension is out of range, or a table does not rise.
Answer<Metres> full_depth(const VesselShape& shape);

// Refused below 0 and above full_depth; of a table, also below its lowest point.
Answer<Litres> volume_at(const VesselShape& shape, Metres depth);

// Its inverse, to 1e-9 m. Range: from empty to full.
Answer<Metres> depth_at(const VesselShape& shape, Litres volume);

}  // namespace tidewright::water
