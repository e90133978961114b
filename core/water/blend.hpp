// Two waters poured together: salt and heat are shared by mass. By litres alone the salinity of 80
// L of seawater with 20 L of fresh water would be wrong by 0.13.
//
// Source: balance of salt and of enthalpy, TEOS-10 (Manuals and Guides 56); the heat of mixing is
// in it. Nothing is lost to air or walls. Error: 1e-4 in salinity, 0.001 degrees, but for the
// readings.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"
#include "core/water/body.hpp"

namespace tidewright::water {

// Range of each: volume 0.001 to 1e6 L, salinity and temperature as seawater.hpp.
Answer<Body> blend(const Body& one, const Body& other);

// `taken` is drawn from the body and as many litres of `other` water are poured in. Range: 0 to the
// body's volume; other.volume is not looked at. The volume may change by some millilitres.
Answer<Body> exchange(const Body& body, Litres taken, const Body& other);

// What animals bear at once: the most that one change may move. Common practice, and the gentle end
// of it; animals differ.
struct ShockLimits {
  PracticalSalinity salinity{1};
  Celsius temperature{1};
};

// The most litres that may be exchanged at once for `other` water, within the limits: the body's
// volume if any amount may. Range: as exchange, limits 0.001 to 70 and 0.001 to 60 degrees.
Answer<Litres> gentle_exchange(const Body& body, const Body& other, const ShockLimits& limits = {});

}  // namespace tidewright::water
