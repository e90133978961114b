// Sea salt of the reference composition: the salt that every number of seawater here stands for.
#pragma once

#include "core/base/units.hpp"

namespace tidewright::water {

// Grams of salt in a kilogram of solution whose practical salinity is one.
// Source: Millero, Feistel, Wright & McDougall 2008, Deep-Sea Research I 55:50-72; TEOS-10 (IOC,
// SCOR & IAPSO 2010, Manuals and Guides 56) section 2.4.
inline constexpr double grams_per_practical_salinity = 35.16504 / 35.0;

// Salt by mass, and back. Exact by definition for salt of the reference composition. A salt made by
// another recipe differs by some tenths of a gram per kilogram (the size is from memory).
constexpr GramsPerKilogram absolute_salinity(PracticalSalinity salinity) {
  return {salinity.value * grams_per_practical_salinity};
}
constexpr PracticalSalinity practical_salinity(GramsPerKilogram salinity) {
  return {salinity.value / grams_per_practical_salinity};
}

}  // namespace tidewright::water
