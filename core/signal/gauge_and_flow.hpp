// The vat's gain against what the product meter says has flowed into it.
#pragma once

#include "core/signal/compare.hpp"

namespace tidewright::signal {

// Compared over each stretch of filling in which ten gauge steps and ten litres have come by the
// one or the other; a stretch in which somebody drew or poured is thrown away.
// More by the meter: the vat may hold more than the gauge says, so both are doubtful and the fill
// stops; after ten minutes both are believed again, and the third time it stays off (level_lost).
// More by the gauge: the gauge is the more dangerous witness and rules; the meter is doubtful
// until they agree again.
void compare_gauge_with_flow(const Beside&, state::Signals&, state::Comparison&, Wake&);

}  // namespace tidewright::signal
