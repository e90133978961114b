// Sediment filter: how clogged it is, by its pressure drop. A drop says nothing without the flow at
// which it was read: half the flow through a full filter drops as little as a clean one.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

// The drop that would be read at `reference`, by the power of the flow. Range: drop 0 to 20 bar,
// flows 0.01 to 1e5 L/h within a factor of 10 of each other, power 1 to 2. Error: slow laminar flow
// goes with power 1, a housing's fittings with 2; 20 % for flows within a factor of 1.5.
// Source: the power 1.5 as in the normalised differential pressure of plants, page "ASTM on Data
// Normalisation" of the University of New South Wales' desalination wiki. A maker's cartridges show
// 1.0 and 1.1 when clean.
Answer<Bars> drop_at_flow(Bars drop, LitresPerHour flow, LitresPerHour reference,
                          double power = 1.5);

// Change at 1 bar at the latest (industrial cartridge maker), or 0.7 bar above the clean drop
// (common practice), both at the flow at which the clean one was read.
struct SedimentLimits {
  Bars drop{1};
  Bars above_clean{0.7};
};

// What of the allowed rise is used up: 0 as clean, 1 or more: change it. Range: as drop_at_flow,
// limits 0.01 to 20 bar.
Answer<double> clogging(Bars clean, LitresPerHour clean_flow, Bars drop, LitresPerHour flow,
                        const SedimentLimits& limits = {});

}  // namespace tidewright::water
