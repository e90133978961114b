// The quantities, one file each.
#pragma once

#include "daemon/commands/reckon/quantity.hpp"

namespace tidewright::commands::reckon {

extern const Quantity blend;
extern const Quantity carbon;
extern const Quantity carbonate;
extern const Quantity change;
extern const Quantity correct;
extern const Quantity density;
extern const Quantity dose;
extern const Quantity evaporation;
extern const Quantity gravity;
extern const Quantity hardness;
extern const Quantity irrigation;
extern const Quantity membrane;
extern const Quantity normalised;
extern const Quantity readings;
extern const Quantity resin;
extern const Quantity rotation;
extern const Quantity salinity;
extern const Quantity sediment;
extern const Quantity series;
extern const Quantity solids;
extern const Quantity startup;
extern const Quantity vessel;
extern const Quantity zero;

}  // namespace tidewright::commands::reckon
