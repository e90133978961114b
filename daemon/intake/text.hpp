// Strict reading of short texts: numbers, times, and whether bytes are text at all.
// Called by daemon/intake only. Nothing here depends on a locale.
#pragma once

#include <optional>
#include <string_view>
#include <variant>

#include "core/base/instant.hpp"
#include "daemon/intake/intake.hpp"

namespace tidewright::intake {

// Whether the bytes are well-formed UTF-8 (RFC 3629, section 4: no overlong forms, no surrogates).
bool is_utf8(std::string_view bytes);

// Without the spaces, tabs and line ends around it.
std::string_view trimmed(std::string_view text);

// A decimal number with a point, perhaps with sign and exponent: "21.5", "-3", "+4", "2e1".
std::variant<double, Refused> number(std::string_view text);

// Milliseconds since 1970 in UTC from ISO 8601 ("2026-05-01T06:30:00.5+02:00", "…Z"; without an
// offset it is local time, `zone` ahead of UTC) or from Unix seconds. None if it is neither.
std::optional<Duration> utc_time(std::string_view text, std::chrono::minutes zone);

}  // namespace tidewright::intake
