#include <array>
#include <cmath>
#include <initializer_list>

#include "core/report/outside.hpp"
#include "core/water/level.hpp"
#include "core/water/vessel_shape.hpp"
#include "tests/support/between.hpp"

namespace tidewright::water {
namespace {

using support::between;

MeasuredTable any_table() {
  MeasuredTable table;
  MeasuredTable::Point point{{*between(0, 0.2)}, {*between(0, 5)}};
  const int points = *rc::gen::inRange(2, 33);
  for (int i = 0; i < points; ++i) {
    table.points.push(point);
    point = {point.depth + Metres{*between(0.001, 0.1)}, point.volume + Litres{*between(0.01, 9)}};
  }
  return table;
}

VesselShape any_shape() {
  const auto metres = [] { return Metres{*between(0.05, 2)}; };
  switch (*rc::gen::inRange(0, 5)) {
    case 0:
      return UprightCylinder{metres(), metres()};
    case 1:
      return TruncatedCone{metres(), metres(), metres()};
    case 2:
      return Box{metres(), metres(), metres()};
    case 3:
      return LyingCylinder{metres(), metres()};
    default:
      return any_table();
  }
}

// The depth at a part of the way from the lowest possible to full.
Metres depth_of(const VesselShape& shape, double part) {
  const auto* table = std::get_if<MeasuredTable>(&shape);
  const Metres low = table ? table->points[0].depth : Metres{0};
  const Metres full = *full_depth(shape);
  return {std::lerp(low.value, full.value, part)};
}

RC_GTEST_PROP(Vessel, DepthAndVolumeAreInverse, ()) {
  const VesselShape shape = any_shape();
  const Metres depth = depth_of(shape, *between(0, 1));
  const auto volume = volume_at(shape, depth);
  RC_ASSERT(static_cast<bool>(volume));
  const auto back = depth_at(shape, *volume);
  RC_ASSERT(static_cast<bool>(back));
  // A lying cylinder's surface vanishes at its ends: judged by litres there.
  RC_ASSERT(std::abs(volume_at(shape, *back)->value - volume->value) <= 1e-4);
  RC_ASSERT(std::abs(back->value - depth.value) <= 1e-5);
}

RC_GTEST_PROP(Vessel, HoldsMoreTheDeeper, ()) {
  const VesselShape shape = any_shape();
  const double part = *between(0, 0.99);
  RC_ASSERT(*volume_at(shape, depth_of(shape, part)) <
            *volume_at(shape, depth_of(shape, part + 0.01)));
}

RC_GTEST_PROP(Level, IsTheInverseOfTheGauge, ()) {
  const Metres gauge{*between(0, 3)};
  const Metres depth = gauge * *between(0, 1);
  const auto distance = distance_from_depth(depth, gauge);
  RC_ASSERT(std::abs((*depth_from_distance(*distance, gauge) - depth).value) <= 1e-12);
  const KilogramsPerCubicMetre density{*between(990, 1040)};
  const auto pressure = pressure_from_depth(gauge + depth, density, gauge);
  RC_ASSERT(std::abs((*depth_from_pressure(*pressure, density, gauge) - gauge - depth).value) <=
            1e-12);
}

// 0.0980665 bar is a conventional metre of water of 1000 kg/m3 (ISO 80000-4 annex: conventional
// metre of water).
TEST(Level, OfAMetreOfWater) {
  EXPECT_NEAR(depth_from_pressure(Bars{0.0980665}, {1000})->value, 1, 1e-9);
  EXPECT_NEAR(depth_from_pressure(Bars{0.0980665}, {1000}, {0.05})->value, 1.05, 1e-9);
  EXPECT_NEAR(pressure_from_depth({2}, {1000})->value, 0.196133, 1e-9);
}

TEST(Level, RefusesWhatCannotBe) {
  EXPECT_EQ(report::words(*depth_from_distance({1.3}, {1.2}).outside()),
            "distance 1.3 m is outside 0 to 1.2 m");
  EXPECT_FALSE(pressure_from_depth({0.1}, {1000}, {0.2}));
}

MeasuredTable table_of(std::initializer_list<MeasuredTable::Point> points) {
  MeasuredTable table;
  for (const auto& point : points) table.points.push(point);
  return table;
}

TEST(MeasuredVessel, IsAStraightLineInBetween) {
  const VesselShape bucket = table_of({{{0}, {0}}, {{0.1}, {10}}, {{0.3}, {40}}});
  EXPECT_NEAR(volume_at(bucket, {0.05})->value, 5, 1e-9);
  EXPECT_NEAR(volume_at(bucket, {0.1})->value, 10, 1e-9);
  EXPECT_NEAR(volume_at(bucket, {0.2})->value, 25, 1e-9);
  EXPECT_NEAR(volume_at(bucket, {0.3})->value, 40, 1e-9);
  EXPECT_NEAR(depth_at(bucket, {25})->value, 0.2, 1e-8);
}

TEST(MeasuredVessel, RefusesATableThatDoesNotRise) {
  EXPECT_EQ(report::words(*full_depth(table_of({{{0}, {0}}})).outside()),
            "number of measured points 1 is outside 2 to 32");
  EXPECT_EQ(
      report::words(*full_depth(table_of({{{0}, {0}}, {{0.2}, {9}}, {{0.1}, {12}}})).outside()),
      "next measured depth 0.1 m is outside 0.200001 to 100 m");
  EXPECT_FALSE(full_depth(table_of({{{0}, {0}}, {{0.2}, {9}}, {{0.3}, {9}}})));
  EXPECT_EQ(report::words(*volume_at(table_of({{{0.1}, {3}}, {{0.2}, {9}}}), {0.05}).outside()),
            "depth 0.05 m is outside 0.1 to 0.2 m");
}

TEST(Vessel, RefusesWhatIsNotInIt) {
  const VesselShape barrel = UprightCylinder{{0.3}, {1}};
  EXPECT_EQ(report::words(*volume_at(barrel, {1.2}).outside()), "depth 1.2 m is outside 0 to 1 m");
  EXPECT_FALSE(volume_at(barrel, {-0.1}));
  EXPECT_FALSE(depth_at(barrel, {300}));
  EXPECT_FALSE(full_depth(Box{{1}, {0}, {1}}));
  EXPECT_FALSE(full_depth(Box{{100}, {100}, {100}}));
}

}  // namespace
}  // namespace tidewright::water
