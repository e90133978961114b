// What is in seawater: the solutes of sea salt of the reference composition, by mass and by litre.
// Source: Millero, Feistel, Wright & McDougall 2008, Deep-Sea Research I 55:50-72 table 4 (TEOS-10,
// Manuals and Guides 56, table D.3): mole fractions to 7 digits from memory; with the molar masses
// they give the printed mass fractions to 1e-7.
#pragma once

#include <array>
#include <string_view>

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

struct Solute {
  std::string_view symbol;
  int charge;
  double mole_fraction;  // of all solutes
  double molar_mass_g_mol;
};

inline constexpr std::array solutes{
    Solute{"Na+", 1, 0.4188071, 22.98976928},  Solute{"Mg++", 2, 0.0471678, 24.305},
    Solute{"Ca++", 2, 0.0091823, 40.078},      Solute{"K+", 1, 0.0091159, 39.0983},
    Solute{"Sr++", 2, 0.0000810, 87.62},       Solute{"Cl-", -1, 0.4874839, 35.453},
    Solute{"SO4--", -2, 0.0252152, 96.0626},   Solute{"HCO3-", -1, 0.0015340, 61.01684},
    Solute{"Br-", -1, 0.0007520, 79.904},      Solute{"CO3--", -2, 0.0002134, 60.0089},
    Solute{"B(OH)4-", -1, 0.0000900, 78.8404}, Solute{"F-", -1, 0.0000610, 18.9984032},
    Solute{"OH-", -1, 0.0000071, 17.00734},    Solute{"B(OH)3", 0, 0.0002807, 61.833},
    Solute{"CO2", 0, 0.0000086, 44.0095},
};

// Grams of the solute in a gram of salt.
double mass_fraction(const Solute& solute);

// All salt, and one solute, in a litre of seawater. Ranges as of density_teos10.
Answer<MilligramsPerLitre> salt_per_litre(PracticalSalinity salinity, Celsius temperature);
Answer<MilligramsPerLitre> solute_per_litre(const Solute& solute, PracticalSalinity salinity,
                                            Celsius temperature);

// Dissolved solids, mg/L, for each uS/cm at 25 degrees: 0.678 at 35, 0.561 at 5, so that no TDS
// meter's constant is right in seawater. Refused below 0.1, where the scale of salinity no longer
// bears a ratio.
Answer<double> dissolved_solids_factor(PracticalSalinity salinity);

}  // namespace tidewright::water
