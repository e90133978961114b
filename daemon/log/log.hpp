// What the daemon says to whoever looks after it, on stderr. Transitions only; what is said again
// and again is said once and then counted: "… (x 523 in 10 min)".
// Any thread may call; none waits for more than the other's line.
#pragma once

#include <cstdint>
#include <string_view>

namespace tidewright::log {

enum class Format : std::uint8_t { text, json };

// Before the first line; without it, text.
void open(Format format);

void info(std::string_view line);
void warning(std::string_view line);
void error(std::string_view line);

// Now and then, so that a count is said even if nothing else is.
void tend();
// The last call: says the counts that are left.
void close();

}  // namespace tidewright::log
