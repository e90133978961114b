// Water meters, be they a flow or a count, as litres that have passed.
#pragma once

#include <optional>

#include "core/signal/compare.hpp"

namespace tidewright::signal {

// The meter at that place: a flow where there is one, else a count; none if there is neither.
std::optional<room::InstrumentIndex> water_meter(const room::Room&, const state::Signals&,
                                                 room::Place);
// Its position in Comparison::water; `place` is one of state::metered_places.
std::size_t metered(room::Place place);
// Less than this is no flow: what a meter at rest shows. 0 where no purifier is known.
LitresPerHour least_flow(const room::Room&, const room::Instrument&);

// After a start: each meter's next reading is a beginning.
void begin_anew(state::Comparison&, Instant now);

// Books each reading that has come, at any quality but garbage. A flow counts for the time since
// the one before, at most as long as its silence is normal. A count that falls has wrapped where
// that gives a credible flow, else it was restarted and begins anew.
// Notes since when everything is off, and what had passed when the run-down was over.
void book_water(const Beside&, const state::Signals&, state::Comparison&);

// Everything must have been off for so long before flow means anything: the membrane's housing
// empties itself.
inline constexpr Duration run_down = std::chrono::minutes{2};

}  // namespace tidewright::signal
