// Strict reading of short texts: numbers, and whether bytes are text at all.
// Called by daemon/intake only. Nothing here depends on a locale.
#pragma once

#include <string_view>
#include <variant>

#include "daemon/intake/intake.hpp"

namespace tidewright::intake {

inline bool is_digit(char c) { return c >= '0' && c <= '9'; }

// Whether the bytes are well-formed UTF-8 (RFC 3629, section 4: no overlong forms, no surrogates).
bool is_utf8(std::string_view bytes);

// Without the spaces, tabs and line ends around it.
std::string_view trimmed(std::string_view text);

// A decimal number with a point, perhaps with sign and exponent: "21.5", "-3", "+4", "2e1".
std::variant<double, Refused> number(std::string_view text);

}  // namespace tidewright::intake
