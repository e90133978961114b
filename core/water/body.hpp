// A body of water that is one throughout: what the mixture's formulas are made of. Salt is counted
// by mass and water by mass, since litres of different waters do not add up; densities are those of
// TEOS-10, see seawater.hpp for what it is made for.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

struct Body {
  Litres volume;
  PracticalSalinity salinity;
  Celsius temperature;
};

// Volumes of all of the mixture's formulas.
inline constexpr Range body_volumes{"volume", "L", 0.001, 1e6};

// Range: volume 0.001 to 1e6 L; salinity and temperature as density. Error 0.001 %.
Answer<Kilograms> mass(const Body& body);

// Salt in it, of the reference composition and without water.
Answer<Kilograms> salt_mass(const Body& body);

}  // namespace tidewright::water
