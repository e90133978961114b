// A journal in which everything happens: a pretend room that is used, disturbed and mistreated by
// seeded chance, with lost links, restarts, garbage and people's requests.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/effect.hpp"
#include "core/room/room.hpp"
#include "core/state/state.hpp"

namespace tidewright::support {

// The lines of such a journal, as docs/journal.md describes them, without a household's file.
std::vector<std::string> eventful_life(const room::Room& room, std::uint64_t seed,
                                       std::size_t events);

// What was decided in one step, and why, as text: equal in every build.
std::string decided(const State& state, const Effects& effects);

}  // namespace tidewright::support
