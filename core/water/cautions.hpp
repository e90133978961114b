// What must be said beside any number about re-using the concentrate or handling pure water.
#pragma once

#include <array>
#include <string_view>

namespace tidewright::water {

// Concentrate on plants, in the laundry or for cleaning. Common practice, but the air gap: EPA
// 816-R-03-002, Cross-Connection Control Manual, 2003.
inline constexpr std::array<std::string_view, 8> concentrate_cautions{
    "It is not drinking water: the carbon filter took out the disinfectant that protected it.",
    "Do not store it warm or for more than a day or two: germs grow in it.",
    "Do not spray it: fine drops of stored water can carry Legionella.",
    "Do not give it to leaves that you eat without an analysis: nitrate, arsenic and other things "
    "are concentrated in it.",
    "Never connect it to a pipe of drinking water. Keep an air gap of twice the pipe's width, at "
    "least 25 mm.",
    "Do not mix it with old salt water: plants die of the salt.",
    "In washing machines and valves it leaves more scale than tap water. Dose for the next class "
    "of hardness.",
    "Local plumbing rules and the water supplier decide; these numbers do not replace them."};

// Permeate and product.
inline constexpr std::array<std::string_view, 3> pure_water_cautions{
    "It is not drinking water: it is not disinfected, and new resin gives off amines.",
    "It attacks metal: use no copper, brass or zinc behind the membrane.",
    "0 ppm says nothing of carbon dioxide, silica, ammonia or germs."};

}  // namespace tidewright::water
