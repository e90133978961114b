// Density of seawater by the equation that was the standard before TEOS-10: an independent check of
// it, made from other measurements and on other scales. It is used for nothing else.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

// At the pressure of one atmosphere. Made for 0 to 42 and -2 to 40 degrees; extrapolated to 70 and
// -6 to 60 degrees; refused beyond. Stated accuracy 0.0036 kg/m3; within 0.009 kg/m3 of TEOS-10 up
// to 40 degrees.
// Source: Millero & Poisson 1981, Deep-Sea Research 28A:625-629; Fofonoff & Millard 1983, UNESCO
// Technical Papers in Marine Science 44 equations 13 and 14; seen in a secondary copy.
Answer<KilogramsPerCubicMetre> density_eos80(PracticalSalinity salinity, Celsius temperature);

}  // namespace tidewright::water
