// What brings a batch that is too weak or too strong to its salinity: salt; or fresh water; or,
// where the vat has no room for that, less of what is in it first.
//
// Source: balance of mass; densities of TEOS-10. All at the batch's temperature. Exact but for the
// readings: dose half of it, let it mix, measure again.
#pragma once

#include <cstdint>
#include <optional>

#include "core/base/units.hpp"
#include "core/water/answer.hpp"
#include "core/water/body.hpp"
#include "core/water/dosing.hpp"

namespace tidewright::water {

struct Correction {
  Litres drain;    // first
  Kilograms salt;  // then one of these two: salt as sold
  Litres fresh;    // pure water
  Litres finished;
};

// Without `vat` there is room for all. With it, and too little room: for a weaker batch drain and
// refill to the volume that it has; for a stronger one drain what the salt will take, so that it
// ends at the brim.
// Range: `body` not above the vat, salinities 0 to 70, water fraction 0 to 0.5. Refused also where
// fresh water makes more than 1e6 L, or where the target is 0 or below a thousandth of the batch's.
Answer<Correction> correction(const Body& body, PracticalSalinity target,
                              double water_fraction = common_water_fraction,
                              std::optional<Litres> vat = {});

}  // namespace tidewright::water
