// How sure each kind of salinity instrument is. What a household knows better of its own, it writes
// over these.
//
// Source: the limits are judgement and common practice, and the hydrometers' classes (ISO 649) and
// the probes' are from memory: none was measured here. A limit of +-a is taken as rectangular, its
// standard uncertainty a / sqrt 3: JCGM 100:2008 section 4.3.7.
#pragma once

#include <cstdint>
#include <span>
#include <string_view>

#include "core/base/units.hpp"
#include "core/water/answer.hpp"
#include "core/water/gravity_scale.hpp"
#include "core/water/uncertainty.hpp"

namespace tidewright::water {

struct Instrument {
  enum class Reads : std::uint8_t {
    conductivity,        // mS/cm, raw
    specific_gravity,    // on a GravityScale, by something that floats
    refractive_index,    // at the temperature given
    brine_scale,         // g/kg of sodium chloride
    practical_salinity,  // a scale of its own
  };

  std::string_view name;   // as it is typed
  std::string_view words;  // "glass hydrometer, divided by 0.001, ..."
  Reads reads;
  // Standard uncertainties: of the reading, in its unit, but of conductivity as a fraction of it;
  // of the sample's temperature; and of what is stated in salinity, such as the standard it was set
  // with.
  double reading;
  Celsius temperature;
  PracticalSalinity salinity;
};

std::span<const Instrument> instruments();

// Null if there is none of that name.
const Instrument* instrument_named(std::string_view name);

// Salinity by an instrument, and how sure it is. `reading` is in the instrument's unit; `scale` is
// for specific gravity alone; `temperature` is not looked at for a brine scale or a scale of its
// own. Range: as the formula of that reading; refused also if an uncertainty is not in 0 to 100.
// Standard uncertainties are carried through to first order: JCGM 100:2008 section 5.1.2.
Answer<Estimate> salinity_by(const Instrument& instrument, double reading, Celsius temperature,
                             GravityScale scale = GravityScale::celsius_25_25);

}  // namespace tidewright::water
