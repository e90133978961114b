// How old a message is, and so what it may prove.
#pragma once

#include "core/base/instant.hpp"
#include "core/event.hpp"
#include "core/room/instrument.hpp"
#include "core/state/signal.hpp"

namespace tidewright::signal {

enum class Age : std::uint8_t {
  fresh,    // believed as far as the other tests allow
  late,     // overtaken by a newer one, by the source's own time: changes nothing
  unknown,  // adds danger; proves nothing else
};

struct Taken {
  Age age{};
  Instant at;  // when it was measured
};
Taken age_of(const room::Instrument&, const state::Signal&, const Reading&, Instant now);

// Values whose "1" is a danger, or the cautious view of things: believed at any age.
bool is_danger(room::Quantity, double value);

}  // namespace tidewright::signal
