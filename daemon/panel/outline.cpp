#include "daemon/panel/outline.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "core/water/vessel_shape.hpp"

namespace tidewright::panel {
namespace {

constexpr double floor_of_brim = 0.7;  // how wide the cone's floor is drawn, of its brim

// In metres as on the drawing, so that the level that is drawn is that of what is drawn.
water::VesselShape cone(const Frame& frame) {
  const double radius = (frame.right - frame.left) / 200;
  return water::TruncatedCone{
      {radius * floor_of_brim}, {radius}, {(frame.bottom - frame.top) / 100}};
}

}  // namespace

std::string outline_path(config::Outline outline, const Frame& b) {
  const double width = b.right - b.left;
  switch (outline) {
    case config::Outline::cone: {
      const double inset = width * (1 - floor_of_brim) / 2;
      return fmt::format("M{} {}H{}L{:.1f} {}H{:.1f}Z", b.left, b.top, b.right, b.right - inset,
                         b.bottom, b.left + inset);
    }
    case config::Outline::box:
      return fmt::format("M{} {}H{}V{}H{}Z", b.left, b.top, b.right, b.bottom, b.left);
    case config::Outline::drum:
      break;
  }
  // A drum seen from the side: its rims are rounded.
  constexpr double r = 14;
  return fmt::format("M{} {}H{}V{}q0 {} -{} {}H{}q-{} 0 -{} -{}Z", b.left, b.top, b.right,
                     b.bottom - r, r, r, r, b.left + r, r, r, r);
}

double surface(config::Outline outline, const Frame& frame, double share) {
  share = std::clamp(share, 0.0, 1.0);
  double depth = share;
  if (outline == config::Outline::cone) {
    const water::VesselShape shape = cone(frame);
    const auto full = water::full_depth(shape);
    const auto brim = full ? water::volume_at(shape, *full) : water::Answer<Litres>(Litres{0});
    const auto at = brim ? water::depth_at(shape, *brim * share) : water::Answer<Metres>(Metres{0});
    if (full && at && full->value > 0) depth = at->value / full->value;
  }
  return frame.bottom - depth * (frame.bottom - frame.top);
}

}  // namespace tidewright::panel
