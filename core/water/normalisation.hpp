// What a membrane's flow and permeate would be at other conditions. From today's conditions to
// those of its first days it is normalisation, which tells a tired membrane from cold water or low
// pressure; from the conditions of its rating to those of the site it is what to expect of it.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"
#include "core/water/membrane_temperature.hpp"
#include "core/water/osmosis.hpp"

namespace tidewright::water {

// `flow` at conditions `from`, carried over to conditions `to`. Range: flow 0 to 1e6 L/h,
// conditions as net_driving_pressure; marked where a temperature is beyond the law's.
// Error: readings within 2 %, 0.1 bar and 1 degree give about 5 % (k = 2) at 5 bar; a maker's
// rating is only good to 15 to 20 % for one membrane.
// Source: FilmTec Reverse Osmosis Membranes Technical Manual, DuPont, form 45-D01504-en rev. 20,
// equation 72, seen in a secondary copy; the structure is that of ASTM D4516.
Answer<LitresPerHour> flow_at(LitresPerHour flow, const MembraneConditions& from,
                              const MembraneConditions& to, const MembraneTemperatureLaw& law = {});

// `permeate` at conditions `from`, carried over to conditions `to`, at which it was
// `permeate_before`. The temperature drops out. Range: permeates 0 to 60 g/L, conditions as
// net_driving_pressure. Source: as above, equation 78.
Answer<MilligramsPerLitre> permeate_at(MilligramsPerLitre permeate, const MembraneConditions& from,
                                       MilligramsPerLitre permeate_before,
                                       const MembraneConditions& to);

}  // namespace tidewright::water
