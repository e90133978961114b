// Events and effects of a replay in plain words.
#pragma once

#include <string>

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/room/room.hpp"
#include "core/state/state.hpp"

namespace tidewright::commands {

// "the leak sensor (the floor by the drain) says wet"
std::string words(const room::Room&, const Event&);
// "OFF to the booster pump: water on the floor (…)". `state` is as step left it.
std::string words(const room::Room&, const State&, const Effect&);

}  // namespace tidewright::commands
