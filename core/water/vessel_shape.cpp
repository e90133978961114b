#include "core/water/vessel_shape.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "core/water/solve.hpp"

namespace tidewright::water {
namespace {

constexpr double litres_per_cubic_metre = 1000;
constexpr double volume_max_l = 1e6;

std::optional<Outside> not_a_length(std::string_view name, Metres length) {
  return outside({name, "m", 0.001, 100}, length.value);
}

std::optional<Outside> wrong(const UprightCylinder& shape) {
  return first(not_a_length("radius", shape.radius), not_a_length("height", shape.height));
}
std::optional<Outside> wrong(const TruncatedCone& shape) {
  return first(not_a_length("bottom radius", shape.bottom_radius),
               not_a_length("top radius", shape.top_radius), not_a_length("height", shape.height));
}
std::optional<Outside> wrong(const Box& shape) {
  return first(not_a_length("length", shape.length), not_a_length("width", shape.width),
               not_a_length("height", shape.height));
}
std::optional<Outside> wrong(const LyingCylinder& shape) {
  return first(not_a_length("radius", shape.radius), not_a_length("length", shape.length));
}
std::optional<Outside> wrong(const MeasuredTable& table) {
  const auto& points = table.points;
  if (points.size() < 2) {
    return Outside{{"number of measured points", "", 2, 32}, static_cast<double>(points.size())};
  }
  auto found =
      first(outside({"lowest measured depth", "m", 0, 100}, points[0].depth.value),
            outside({"lowest measured volume", "L", 0, volume_max_l}, points[0].volume.value));
  for (std::size_t i = 1; i < points.size() && !found; ++i) {
    const auto& [depth, volume] = points[i - 1];
    found =
        first(outside({"next measured depth", "m", depth.value + 1e-6, 100}, points[i].depth.value),
              outside({"next measured volume", "L", volume.value + 1e-6, volume_max_l},
                      points[i].volume.value));
  }
  return found;
}

double full(const UprightCylinder& shape) { return shape.height.value; }
double full(const TruncatedCone& shape) { return shape.height.value; }
double full(const Box& shape) { return shape.height.value; }
double full(const LyingCylinder& shape) { return 2 * shape.radius.value; }
double full(const MeasuredTable& table) {
  return table.points[table.points.size() - 1].depth.value;
}

double lowest(const MeasuredTable& table) { return table.points[0].depth.value; }
template <class Solid>
double lowest(const Solid&) {
  return 0;
}

double litres(const UprightCylinder& shape, double depth) {
  const double r = shape.radius.value;
  return litres_per_cubic_metre * std::numbers::pi * r * r * depth;
}
double litres(const TruncatedCone& shape, double depth) {
  const double bottom = shape.bottom_radius.value;
  const double slope = (shape.top_radius.value - bottom) / shape.height.value;
  const double surface = bottom + slope * depth;
  return litres_per_cubic_metre * std::numbers::pi * depth / 3 *
         (bottom * bottom + bottom * surface + surface * surface);
}
double litres(const Box& shape, double depth) {
  return litres_per_cubic_metre * shape.length.value * shape.width.value * depth;
}
double litres(const LyingCylinder& shape, double depth) {
  const double r = shape.radius.value;
  const double above_centre = std::clamp((depth - r) / r, -1.0, 1.0);
  const double half_chord = std::sqrt(std::max(0.0, 1 - above_centre * above_centre));
  return litres_per_cubic_metre * shape.length.value * r * r *
         (std::acos(-above_centre) + above_centre * half_chord);
}
double litres(const MeasuredTable& table, double depth) {
  const auto above =
      std::find_if(table.points.begin() + 1, table.points.end() - 1,
                   [&](const MeasuredTable::Point& point) { return depth < point.depth.value; });
  const MeasuredTable::Point& high = *above;
  const MeasuredTable::Point& low = *(above - 1);
  const double way = (depth - low.depth.value) / (high.depth - low.depth).value;
  return std::lerp(low.volume.value, high.volume.value, way);
}

// As std::visit, which may throw.
template <class Function>
auto with(const VesselShape& shape, const Function& function) {
  if (const auto* one = std::get_if<UprightCylinder>(&shape)) return function(*one);
  if (const auto* one = std::get_if<TruncatedCone>(&shape)) return function(*one);
  if (const auto* one = std::get_if<Box>(&shape)) return function(*one);
  if (const auto* one = std::get_if<LyingCylinder>(&shape)) return function(*one);
  return function(*std::get_if<MeasuredTable>(&shape));
}

}  // namespace

Answer<Metres> full_depth(const VesselShape& shape) {
  return with(shape, [](const auto& solid) -> Answer<Metres> {
    if (const auto found = wrong(solid)) return *found;
    const double top = full(solid);
    if (const auto much = outside({"volume", "L", 0, volume_max_l}, litres(solid, top))) {
      return *much;
    }
    return Metres{top};
  });
}

Answer<Litres> volume_at(const VesselShape& shape, Metres depth) {
  const auto top = full_depth(shape);
  if (!top) return *top.outside();
  return with(shape, [&](const auto& solid) -> Answer<Litres> {
    const Range range{"depth", "m", lowest(solid), top->value};
    if (const auto found = outside(range, depth.value)) return *found;
    return Litres{litres(solid, depth.value)};
  });
}

Answer<Metres> depth_at(const VesselShape& shape, Litres volume) {
  const auto top = full_depth(shape);
  if (!top) return *top.outside();
  return with(shape, [&](const auto& solid) -> Answer<Metres> {
    const Bracket depths{lowest(solid), top->value};
    const auto litres_at = [&](double depth) { return litres(solid, depth); };
    const Range range{"volume", "L", litres_at(depths.low), litres_at(depths.high)};
    if (const auto found = outside(range, volume.value)) return *found;
    const auto depth = solve(litres_at, volume.value, depths, 1e-9);
    if (!depth) return Outside{range, volume.value};
    return Metres{*depth};
  });
}

}  // namespace tidewright::water
