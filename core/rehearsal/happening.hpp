// What befalls the pretend room, in words: "spill 2 l", "floor falls silent", "booster ignores
// off". Scenarios and the demo's story are written in these lines.
#pragma once

#include <string_view>

#include "core/rehearsal/pretend_room.hpp"

namespace tidewright::rehearsal {

// Lets the line happen to the room now. False if the line is not of this vocabulary:
//   spill N l · dry the floor · draw N l · pour N l (into the vat) · burst N l/h · mend the burst
//   lose N l/h (from the vat into the drain)
//   spend the resin · rotate the resin · replace the resin
//   shut the feed · open the feed · break the pump · mend the pump
//   stick the float valve · close the float valve (and it sticks) · free the float valve
//   stick the feed valve · free the feed valve
//   foul the membrane · clean the membrane · wear the membrane · replace the membrane
//   feed at N ppm
//   INSTRUMENT falls silent | sticks | talks garbage | works again
//   ACTUATOR ignores on | ignores off | obeys again | falls mute | speaks again
//   press ACTUATOR
bool happen(PretendRoom&, const room::Room&, std::string_view line);

}  // namespace tidewright::rehearsal
