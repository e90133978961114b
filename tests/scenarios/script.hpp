// A scenario as it is written: what kind of room, then lines of time and words.
//
//   # Water on the floor while the vat is being filled.      a remark
//   room minimal                                              before the curtain rises
//   0:00:10  floor says wet                                   hours:minutes:seconds, then what
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/instant.hpp"

namespace tidewright::scenarios {

struct Line {
  int number = 0;  // in the file, from 1
  Duration at{0};  // since the curtain; 0 for the lines before it
  std::string words;
};

struct Script {
  std::string about;  // the remarks at the top
  std::vector<Line> setting;
  std::vector<Line> lines;
};

// Throws std::runtime_error with the line's number if a time cannot be read or runs backwards.
Script read_script(std::string_view text);

// "90 s", "5 min", "4 h"
Duration duration_of(std::string_view words);

}  // namespace tidewright::scenarios
