// The plain convention: JSON documents and plain values, for people, scripts and any hub.
// Pure; golden files in tests/golden/plain. Called by the report thread.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/instant.hpp"
#include "core/report/report.hpp"
#include "daemon/hub/message.hpp"

namespace tidewright::hub {

// `<base>/<room>`: where everything of a room is published.
struct Place {
  std::string base;
  std::string room;
  std::string topic(std::string_view rest) const;
};

// All retained: of each thing its JSON document at `<kind>[/<id>]` with `at` first, and each field
// once more as a plain value at `value/<kind>[/<id>]/<name>`; of a source also
// `source/<id>/online` as `online` or `offline`.
// A value that is not known is null, as a plain value `None`, the word that hubs take for that; an
// empty text or list is, as a plain value, `nothing` (an empty retained message would delete its
// topic).
std::vector<Message> plain(const report::Report& report, const Place& place);

// Where that field of the thing is published by itself: below `<base>/<room>/`.
std::string value_path(const report::Thing& thing, std::string_view field);

// One announcement, as JSON, not retained. `event_type` repeats `event`: a hub looks for it.
Message plain(const report::Message& announcement, const Place& place, const WallClock& wall);

}  // namespace tidewright::hub
