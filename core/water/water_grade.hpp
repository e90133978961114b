// What standards allow of pure water, by conductivity.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

// Reagent water, ASTM D1193-99e1, table 1. Type III stands below type II in conductivity: II is
// distilled and allows more of it, with less of other things.
enum class ReagentWater { type_1, type_2, type_3, type_4 };

// The most that the type may have at 25 degrees.
MicrosiemensPerCm conductivity_limit(ReagentWater type);

// The most that pharmaceutical water may have, measured without compensation: USP <645>, stage 1.
// The table's temperature is the next one down, in steps of 5. Range 0 to 100 degrees.
Answer<MicrosiemensPerCm> conductivity_limit_uncompensated(Celsius temperature);

}  // namespace tidewright::water
