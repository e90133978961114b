// Salinity by the refractive index. Index relative to air, sodium's yellow light of 589.26 nm, one
// atmosphere; all functions are linear in salinity, so that their inverses need no solver.
//
// Source: Millard & Seaver 1990, Deep-Sea Research 37(12):1909-1926, regions I and II. Stated
// accuracy 5e-6 in the index (0.03 in salinity). Made for 0 to 30 degrees and 0 to 43; extrapolated
// to -2 to 40 degrees and 70; refused beyond.
// The coefficient of T^3 lambda is -1.705881e-9: a public transcription has e-10, which misses the
// paper's own table 2 by 14 ppm. The exponent is inferred from that table, not read in the paper.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

Answer<double> refractive_index(PracticalSalinity salinity, Celsius temperature);

// `index` as it is at `temperature`, and not one that a refractometer has turned into that at 20
// degrees: for such a one, `temperature` is 20.
Answer<PracticalSalinity> salinity_of_refraction(double index, Celsius temperature);

// By an independent fit, for a cross check only: within 3e-5 of the above, which is 0.16 in
// salinity. Made for 0 to 30 degrees, 0 to 35 and 400 to 700 nm.
// Source: Quan & Fry 1995, Applied Optics 34(18):3477-3480; seen in secondary copies.
Answer<double> refractive_index_quan_fry(PracticalSalinity salinity, Celsius temperature,
                                         double wavelength_nm = 589.26);

}  // namespace tidewright::water
