#include "core/water/vessel_shape.hpp"

#include <string>
#include <vector>

#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

// "r0=0.25 rt=0.3 H=0.8 m" and "0.6 x 0.5 m": what stands behind = or alone.
std::vector<double> dimensions(const Row& row) {
  std::vector<double> all;
  const std::string& text = row.text("dimensions");
  const bool named = text.find('=') != std::string::npos;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const bool begins = at == 0 || text[at - 1] == (named ? '=' : ' ');
    if (begins && text[at] >= '0' && text[at] <= '9') all.push_back(std::stod(text.substr(at)));
  }
  return all;
}

water::VesselShape shape(const Row& row) {
  const auto size = dimensions(row);
  const std::string& name = row.text("shape");
  if (name == "vertical cylinder") return water::UprightCylinder{{size.at(0)}, {2}};
  if (name == "rectangular") return water::Box{{size.at(0)}, {size.at(1)}, {2}};
  if (name.starts_with("truncated cone")) {
    return water::TruncatedCone{{size.at(0)}, {size.at(1)}, {size.at(2)}};
  }
  return water::LyingCylinder{{size.at(0)}, {size.at(1)}};
}

// A lying cylinder that is full: its litres, rounded, leave the depth open to a millimetre.
bool not_full(const Row& row) { return row["depth_m"] < water::full_depth(shape(row))->value; }

INSTANTIATE_TEST_SUITE_P(VolumeAt, Handbook,
                         testing::ValuesIn(checks("purifier/09_volumes.csv", "volume_at",
                                                  {{"litres", std::nullopt,
                                                    [](const Row& row) {
                                                      return or_nan(water::volume_at(
                                                          shape(row), {row["depth_m"]}));
                                                    }}})),
                         place);

INSTANTIATE_TEST_SUITE_P(DepthAt, Handbook,
                         testing::ValuesIn(checks("purifier/09_volumes.csv", "depth_at",
                                                  {{"depth_m", std::nullopt,
                                                    [](const Row& row) {
                                                      return or_nan(water::depth_at(
                                                          shape(row), {row["litres"]}));
                                                    }}},
                                                  not_full)),
                         place);

}  // namespace
}  // namespace tidewright::handbook
