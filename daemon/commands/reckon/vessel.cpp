#include <fmt/format.h>

#include <array>

#include "core/water/level.hpp"
#include "core/water/vessel_shape.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/parameters.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr std::array options{
    Option{"shape", Unit::text, "cylinder, cone, box, lying or table", 0, 0, true},
    Option{"radius", Unit::metres, "cylinder, lying: radius; cone: radius at the bottom", 0.001,
           100, false, by_tape},
    Option{"top-radius", Unit::metres, "cone: radius at the top", 0.001, 100, false, by_tape},
    Option{"height", Unit::metres, "cylinder, cone, box: height", 0.001, 100, false, by_tape},
    Option{"length", Unit::metres, "box, lying: length", 0.001, 100, false, by_tape},
    Option{"width", Unit::metres, "box: width", 0.001, 100, false, by_tape},
    Option{"points", Unit::text, R"(table: "0:0 0.1:12.5 0.4:55", metres and litres)"},
    Option{"depth", Unit::metres, "depth of the water: gives litres", 0, 100, false, by_tape},
    Option{"volume", Unit::litres, "or litres: gives depth", 0, 1e6, false, by_marks},
    Option{"distance", Unit::metres, "or from a gauge above down to the water", 0, 100, false,
           by_tape},
    Option{"pressure",
           Unit::bar,
           "or pressure at a gauge in the water, over the air's",
           0,
           10,
           false,
           {0.005}},
    Option{"gauge-height", Unit::metres, "of the gauge over the bottom", 0, 100, false, by_tape},
    Option{"density", Unit::kilograms_per_cubic_metre,
           "of the water, for pressure and weight; 998 if left out", 900, 1300}};

constexpr double pure_water_kg_m3 = 998;

std::optional<Refusal> need(const Inputs& inputs, std::initializer_list<const char*> lengths) {
  for (const char* length : lengths) {
    if (inputs.has(length)) continue;
    return missing(fmt::format("--{}", length), "this dimension of the shape, inside",
                   fmt::format("Type it, as here: {}", vessel.example));
  }
  return std::nullopt;
}

std::variant<water::VesselShape, Refusal> table_of(const Inputs& inputs) {
  const auto points = read_points(inputs.text_or("points", ""));
  if (const auto* refusal = std::get_if<Refusal>(&points)) return *refusal;
  water::MeasuredTable table;
  for (const auto& [depth, litres] : std::get<std::vector<TypedPoint>>(points)) {
    if (!table.points.push({{depth}, {litres}})) {
      return refused({{"--points", "", 2, 32}, 33});
    }
  }
  return table;
}

std::variant<water::VesselShape, Refusal> shape_of(const Inputs& inputs) {
  const std::string name = inputs.text_or("shape", "");
  const auto metres = [&](const char* length) { return Metres{inputs[length]}; };
  if (name == "cylinder") {
    if (auto refusal = need(inputs, {"radius-m", "height-m"})) return *refusal;
    return water::UprightCylinder{metres("radius-m"), metres("height-m")};
  }
  if (name == "cone") {
    if (auto refusal = need(inputs, {"radius-m", "top-radius-m", "height-m"})) return *refusal;
    return water::TruncatedCone{metres("radius-m"), metres("top-radius-m"), metres("height-m")};
  }
  if (name == "box") {
    if (auto refusal = need(inputs, {"length-m", "width-m", "height-m"})) return *refusal;
    return water::Box{metres("length-m"), metres("width-m"), metres("height-m")};
  }
  if (name == "lying") {
    if (auto refusal = need(inputs, {"radius-m", "length-m"})) return *refusal;
    return water::LyingCylinder{metres("radius-m"), metres("length-m")};
  }
  if (name == "table") return table_of(inputs);
  return unknown("--shape", "`" + name + "`", "what the vessel is",
                 "cylinder, cone, box, lying, table", "Type one of these.");
}

std::variant<water::Answer<Metres>, Refusal> depth_of(const water::VesselShape& shape,
                                                      const Inputs& inputs) {
  const Metres gauge{inputs.value_or("gauge-height-m", 0)};
  int given = 0;
  for (const char* stem : {"depth-m", "volume-l", "distance-m", "pressure-bar"})
    given += inputs.has(stem);
  if (given != 1) {
    return missing("--depth-m, --volume-l, --distance-m or --pressure-bar", "one of these",
                   fmt::format("Type one, as here: {}", vessel.example));
  }
  if (inputs.has("depth-m")) return water::Answer<Metres>(Metres{inputs["depth-m"]});
  if (inputs.has("volume-l")) return water::depth_at(shape, {inputs["volume-l"]});
  if (inputs.has("distance-m")) {
    if (auto refusal = need(inputs, {"gauge-height-m"})) return *refusal;
    return water::depth_from_distance({inputs["distance-m"]}, gauge);
  }
  return water::depth_from_pressure({inputs["pressure-bar"]},
                                    {inputs.value_or("density-kg-m3", pure_water_kg_m3)}, gauge);
}

Outcome reckon_vessel(const Inputs& inputs) {
  const auto shape = shape_of(inputs);
  if (const auto* refusal = std::get_if<Refusal>(&shape)) return *refusal;
  const auto& solid = std::get<water::VesselShape>(shape);
  const auto top = water::full_depth(solid);
  if (!top) return refused(*top.outside());
  const auto depth = depth_of(solid, inputs);
  if (const auto* refusal = std::get_if<Refusal>(&depth)) return *refusal;
  const auto& answer = std::get<water::Answer<Metres>>(depth);
  if (!answer) return refused(*answer.outside());
  const auto litres = water::volume_at(solid, *answer);
  if (!litres) return refused(*litres.outside());
  const Litres full = *water::volume_at(solid, *top);
  const double weight = litres->value / 1000 * inputs.value_or("density-kg-m3", pure_water_kg_m3);
  return Reckoned{
      {{"volume_l", "volume", litres->value, Unit::litres, 3},
       {"depth_m", "depth", answer->value, Unit::metres, 4},
       {"full_l", "full", full.value, Unit::litres, 3},
       {"fill_percent", "filled", 100 * (*litres / full), Unit::percent, 2},
       {"weight_kg", "weight of the water", weight, Unit::kilograms, 1}},
      "the shape's own, from its inside dimensions; from pressure: depth = pressure / (density x "
      "9.80665 m/s2)",
      "solid geometry; hydrostatics",
      "walls that bulge and rounded edges are not in it",
      std::nullopt,
      {},
      {fmt::format("Full it weighs {:.0f} kg and the vessel: mind floor and stand.",
                   full.value / 1000 * inputs.value_or("density-kg-m3", pure_water_kg_m3))}};
}

}  // namespace

const Quantity vessel{
    "vessel", "Litres in a vessel, from depth, distance or pressure, and back",
    "tidewright reckon vessel --shape cylinder --radius-m 0.3 --height-m 1 --depth-m 0.5", options,
    reckon_vessel};

}  // namespace tidewright::commands::reckon
