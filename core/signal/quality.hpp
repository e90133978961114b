// How a quality is lost, and what counts as a sound reading. For the tests of this folder.
#pragma once

#include <limits>

#include "core/base/instant.hpp"
#include "core/room/room.hpp"
#include "core/state/signal.hpp"

namespace tidewright::signal {

template <class T>
void count(T& counter) {
  if (counter < std::numeric_limits<T>::max()) ++counter;
}

void lose(state::Signal&, Quality, DeviceStatus, Why, Instant now);

// Good again: every test of its own has been passed.
void find_good(state::Signal&);

// Passes a message over: it held no reading. The second in a row costs the quality.
void refuse(state::Signal&, Why, Instant now);

// Its own tests find nothing against it, whatever other instruments say.
bool is_sound(const state::Signal&);

// What a comparison has against an instrument. One doubt at a time: a second waits for the first
// to end, but a gauge below a lifted float is bad whatever else is said of it.
//   against  the instrument that contradicts it, or no_subject
//   a, b     the reason's numbers
void doubt(state::Signal&, Why, std::uint8_t against, double a, double b, Instant now);
// Ends that doubt, and no other.
void trust(state::Signal&, Why);
// The same for every instrument of the quantity and place of that one.
void doubt_all_like(const room::Room&, state::Signals&, room::InstrumentIndex, Why,
                    std::uint8_t against, double a, double b, Instant now);
void trust_all_like(const room::Room&, state::Signals&, room::InstrumentIndex, Why);
// Takes the quality away, as the doubt that stands has it.
void apply_doubt(state::Signal&, Instant now);

}  // namespace tidewright::signal
