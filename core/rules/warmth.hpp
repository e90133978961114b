// Whether a thermometer of the room or the feed is beyond a limit. For frost and room_hot.
#pragma once

#include "core/rules/rule.hpp"

namespace tidewright::rules {

enum class Beyond : std::uint8_t { below, above };

// Beyond at any quality but bad; back only when every thermometer is good and half a degree within.
// The reason names the thermometer.
Judgement judge_warmth(const picture::Picture&, room::RuleId, Celsius limit, Beyond, Why);

// A purifier, and a thermometer of the room or the feed.
bool warmth_is_measured(const room::Room&);

}  // namespace tidewright::rules
