// Text becomes HTML. All that comes from outside the program passes escaped().
#pragma once

#include <string>
#include <string_view>

namespace tidewright::panel {

// Safe between tags and inside a quoted attribute. A control character becomes a blank, so that
// HTML of ours is always one line.
std::string escaped(std::string_view text);

// `<name attributes>inner</name>`; `attributes` begin with a blank or are empty, `inner` is HTML.
std::string element(std::string_view name, std::string_view attributes, std::string_view inner);

}  // namespace tidewright::panel
