// Makes letters of what core has announced. Pure. Called by alerts.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "config/household.hpp"
#include "core/state/state.hpp"
#include "daemon/post/letter.hpp"

namespace tidewright::alerts {

struct Composed {
  post::Letter letter;
  std::string of;      // the alarm and its occurrence, of a reminder; a newer one replaces it
  Instant not_before;  // until then it waits, for nobody is to be disturbed
};

// One for each way that the household wants to be told of it; often none.
//   notice    one of state.notices, not older than the state
//   instance  stands before its number in the letter's id
std::vector<Composed> compose(const config::Household& household, const State& state,
                              const state::Notice& notice, std::string_view instance);

// When the hours in which nobody is to be disturbed are over; `at` itself outside of them.
Instant end_of(const room::Hours& hours, Instant at, const WallClock& wall);

}  // namespace tidewright::alerts
