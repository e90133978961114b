// How much of a salt as it is sold makes fresh water into seawater.
//
// No salt on sale is dry: its crystals hold water, and it draws more from the air. Its water
// fraction is 0 if all is dry and 0.15 if its magnesium, calcium and strontium come as their usual
// hydrates (by the recipe of Kester, Duedall, Connors & Pytkowicz 1967, Limnology and Oceanography
// 12:176-179). A measured range of what is sold was not found: 0.05 is common practice; learn it
// from each batch by `salt_yield`. It matters more than all else: 0.05 more is 5 % more salt.
//
// Source: balance of mass; densities of TEOS-10. Salt is taken as of the reference composition, and
// weighed in air (its buoyancy is less than 0.1 %). Error: that of volume and water fraction.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

inline constexpr double common_water_fraction = 0.05;
inline constexpr Range water_fractions{"water fraction of the salt", "", 0, 0.5};

struct Batch {
  Litres fresh;    // pure water that goes in
  Kilograms salt;  // as sold
  Litres finished;
};

// Range of all: volumes 0.001 to 1e6 L, salinity 0 to 70 (above 41.8, marked), temperature as
// density, water fraction 0 to 0.5.
// A batch of so much fresh water: it grows by 1 to 1.6 % at 35, which a full vat has no room for.
Answer<Batch> batch_of_fresh(Litres fresh, Celsius temperature, PracticalSalinity target,
                             double water_fraction = common_water_fraction);
// A batch that ends with so much.
Answer<Batch> batch_of_finished(Litres finished, Celsius temperature, PracticalSalinity target,
                                double water_fraction = common_water_fraction);

// What salt and fresh water give. Range: salt 0 to 1 kg for each litre.
Answer<PracticalSalinity> salinity_of_batch(Litres fresh, Celsius temperature, Kilograms salt,
                                            double water_fraction = common_water_fraction);

// What of the salt was salt, from the salinity that a batch came to: 1 - water fraction. A fall
// from bucket to bucket is a wet or a caked one. Range: salt 1e-6 to 1 kg for each litre; marked
// outside 0.8 to 1.02, where rather the salinity, the litres or the scale are wrong.
Answer<double> salt_yield(Litres fresh, Celsius temperature, Kilograms salt,
                          PracticalSalinity came_to);

}  // namespace tidewright::water
