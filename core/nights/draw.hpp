// A night drawn from a seed: wild habits and a few faults at a few moments.
#pragma once

#include <string>

#include "core/nights/night.hpp"
#include "core/rehearsal/chance.hpp"

namespace tidewright::nights {

// An incident: six to eight hours around one to three faults, the water and the people that go with
// them. Same household, room and seed: same night for ever.
Night draw_incident(const std::string& household, const room::Room&, std::uint64_t seed);
// A whole day with up to six faults.
Night draw_day(const std::string& household, const room::Room&, std::uint64_t seed);

// Five bad hours, then all is well again: everything ends, the floor is dry. With a person, alarms
// are reset and a fill is started; without one, the daemon must go on by itself where no trip is
// latched. Lasts until the vat must be full. For rooms that fill to a mark by themselves.
Night draw_recovery(const std::string& household, const room::Room&, std::uint64_t seed);
// The same faults in another order of chance: other noise, other moments, some other habits.
void vary(Night&, std::uint64_t seed);
// The same night with one fault more, of this kind, at the moment of one of the other; as it was
// where the room can have no such fault or the night has no such moment.
void join(Night&, const FaultKind&, const FaultKind& beside, const room::Room&, std::uint64_t seed);
// A fill, that one fault (null: none) and nothing else, and water on the floor while it lasts.
Night draw_wet_under(const FaultKind*, const std::string& household, const room::Room&,
                     rehearsal::Chance&);

}  // namespace tidewright::nights
