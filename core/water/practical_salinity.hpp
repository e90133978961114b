// Practical salinity from conductivity and back, at the pressure of one atmosphere.
//
// Source: the Practical Salinity Scale 1978: Perkin & Lewis 1980, IEEE Journal of Oceanic
// Engineering OE-5:9-16; Fofonoff & Millard 1983, UNESCO Technical Papers in Marine Science 44.
// Below 2: Hill, Dauphinee & Woods 1986, IEEE Journal of Oceanic Engineering OE-11:109-112, scaled
// at each temperature so that the two meet at 2, as TEOS-10 does (Manuals and Guides 56, appendix
// E); it holds for diluted sea salt, not for tap water. Seen in secondary copies.
// The scale is defined for 2 to 42 and -2 to 35 degrees (Celsius is ITS-90; the conversion to the
// scale's own degrees is done here). Extrapolated to 0 to 70 and -5 to 60 degrees; refused beyond.
// Stated accuracy in its range: 0.001 (the scale's own); a probe's 1 % of conductivity is 0.4.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

// Conductivity of standard seawater, salinity 35, at 15 degrees IPTS-68: what ratios are made with.
// Source: Culkin & Smith 1980, IEEE Journal of Oceanic Engineering OE-5:22-23.
inline constexpr MillisiemensPerCm standard_seawater_conductivity{42.914};

// `conductivity` is the raw one, at `temperature`, and not one that a meter has turned into that at
// 25 degrees: for those see conductivity_compensation.hpp. Zero below about 0.002 mS/cm.
Answer<PracticalSalinity> practical_salinity(MillisiemensPerCm conductivity, Celsius temperature);

// `ratio`: the sample's conductivity to that of standard seawater at the same temperature, as a
// laboratory salinometer shows it (the source's Rt).
Answer<PracticalSalinity> salinity_of_ratio(double ratio, Celsius temperature);

// The conductivity, raw at `temperature`, of water of this salinity. The inverse of the above, to
// 1e-9 of the salinity.
Answer<MillisiemensPerCm> conductivity(PracticalSalinity salinity, Celsius temperature);

}  // namespace tidewright::water
