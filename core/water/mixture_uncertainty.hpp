// How sure a dose and a blend are: what is weighed, measured out and believed of the salt, carried
// through to first order (JCGM 100:2008 section 5.1.2).
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"
#include "core/water/body.hpp"
#include "core/water/dosing.hpp"
#include "core/water/uncertainty.hpp"

namespace tidewright::water {

// Standard uncertainties. Common practice: marks of a vat to 1 %, kitchen scales to 0.1 %, the
// water of the salt to 0.03 of it until it was learned from a batch; each as a limit.
struct DosingUncertainty {
  double volume_fraction = rectangular(0.01);
  double salt_fraction = rectangular(0.001);
  double water_fraction = rectangular(0.03);
};

// Kilograms of salt, as batch_of_fresh: how much the right amount may differ from it.
Answer<Estimate> dose_estimate(Litres fresh, Celsius temperature, PracticalSalinity target,
                               double water_fraction, const DosingUncertainty& by = {});

// The practical salinity that a weighed dose gives. Ranges as batch_of_finished.
Answer<Estimate> salinity_estimate(Litres finished, Celsius temperature, PracticalSalinity target,
                                   double water_fraction, const DosingUncertainty& by = {});

struct BlendUncertainty {
  double volume_fraction = rectangular(0.01);
  PracticalSalinity salinity{0.34};  // a conductivity probe of 1 % and 0.5 degrees
  Celsius temperature{rectangular(0.5)};
};
struct BlendEstimate {
  Body body;
  PracticalSalinity salinity_uncertainty;
  Celsius temperature_uncertainty;
};
// Ranges as blend. Both waters are read by instruments of their own kind, independently.
Answer<BlendEstimate> blend_estimate(const Body& one, const Body& other,
                                     const BlendUncertainty& by = {});

}  // namespace tidewright::water
