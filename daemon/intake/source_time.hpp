// A source's own time, as text, on the line of UTC. Called by daemon/intake only.
#pragma once

#include <optional>
#include <string_view>

#include "core/base/instant.hpp"

namespace tidewright::intake {

// Milliseconds since 1970 in UTC from ISO 8601 ("2026-05-01T06:30:00.5+02:00", "…Z"; without an
// offset it is local time, `zone` ahead of UTC) or from Unix seconds. None if it is neither.
std::optional<Duration> utc_time(std::string_view text, std::chrono::minutes zone);

}  // namespace tidewright::intake
