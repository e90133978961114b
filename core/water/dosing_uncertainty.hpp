// How sure the salinity of a batch is that was weighed and not measured: what is weighed, measured
// out and believed of the salt, carried through to first order (JCGM 100:2008 section 5.1.2).
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"
#include "core/water/uncertainty.hpp"

namespace tidewright::water {

// Standard uncertainties. Common practice: marks of a vat to 1 %, kitchen scales to 0.1 %, the
// water of the salt to 0.03 of it until it was learned from a batch; each as a limit.
struct DosingUncertainty {
  double volume_fraction = rectangular(0.01);
  double salt_fraction = rectangular(0.001);
  double water_fraction = rectangular(0.03);
};

// The practical salinity that a weighed dose gives. Ranges as batch_of_finished.
Answer<Estimate> salinity_estimate(Litres finished, Celsius temperature, PracticalSalinity target,
                                   double water_fraction, const DosingUncertainty& by = {});

}  // namespace tidewright::water
