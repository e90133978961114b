// Density and heat of seawater of the reference composition and of pure water, at the pressure of
// one atmosphere, by the International Thermodynamic Equation of Seawater (TEOS-10).
//
// Source: the Gibbs function of IAPWS SR7-09 (2009) for water and of IAPWS R13-08 (2008) for salt,
// as in IOC, SCOR & IAPSO 2010, Manuals and Guides 56, appendices G and H; the coefficients were
// seen in a secondary copy.
// Made for 0 to 42 g/kg and -6 to 40 degrees; extrapolated to 120 g/kg and 60 degrees; refused
// beyond. Stated accuracy of density 0.004 kg/m3 (0.001 for pure water), of heat capacity
// 0.5 J/(kg K): what is left is how far a salt on sale is from the reference composition.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

Answer<KilogramsPerCubicMetre> density_teos10(GramsPerKilogram salinity, Celsius temperature);
Answer<KilogramsPerCubicMetre> density_pure(Celsius temperature);

// The same, of seawater whose practical salinity is known; refused above 115.
Answer<KilogramsPerCubicMetre> density(PracticalSalinity salinity, Celsius temperature);

// The salinity at which water of this temperature has this density, to 1e-9 g/kg.
Answer<GramsPerKilogram> salinity_of_density(KilogramsPerCubicMetre density, Celsius temperature);

// At constant pressure.
Answer<JoulesPerKilogramKelvin> heat_capacity(GramsPerKilogram salinity, Celsius temperature);

// Heat content, enthalpy: what waters that are blended share by mass, as they share salt. Zero at
// 0 degrees and 35.16504 g/kg. It is TEOS-10's conservative temperature times
// 3991.86795711963 J/(kg K).
Answer<JoulesPerKilogram> enthalpy(GramsPerKilogram salinity, Celsius temperature);

// The temperature at which water of this salinity has this enthalpy, to 1e-9 degrees.
Answer<Celsius> temperature_of_enthalpy(GramsPerKilogram salinity, JoulesPerKilogram enthalpy);

}  // namespace tidewright::water
