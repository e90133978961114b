// Two temperature scales: probes of today read ITS-90; the equations of seawater made before 1990
// were fitted to IPTS-68. Feeding one the other's number is an error of 0.003 to 0.005 in salinity.
#pragma once

#include "core/base/units.hpp"

namespace tidewright::water {

// Degrees IPTS-68 of a temperature ITS-90, and back; right to 0.001 degrees from -2 to 45.
// Source: Saunders 1990, WOCE Newsletter 10; TEOS-10 (Manuals and Guides 56) section A.1.
constexpr double degrees_ipts_68(Celsius temperature) { return 1.00024 * temperature.value; }
constexpr Celsius from_ipts_68(double degrees) { return {degrees / 1.00024}; }

}  // namespace tidewright::water
