// How sure an answer is, for every quantity alike: the limits of what was measured, carried through
// the quantity itself to first order (JCGM 100:2008 section 5.1.3, note 2).
#pragma once

#include "daemon/commands/reckon/quantity.hpp"

namespace tidewright::commands::reckon {

// Gives each number of `reckoned`, which `quantity` answers for `inputs`, its expanded uncertainty
// (k = 2) for inputs that were measured independently; and says what that stands on. A number that
// has an uncertainty of its own keeps it; one that no measured input moves gets none.
void add_sureness(const Quantity& quantity, const Inputs& inputs, Reckoned& reckoned);

}  // namespace tidewright::commands::reckon
