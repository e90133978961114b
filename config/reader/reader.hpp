// Household file (TOML) -> Household, or every problem at once.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "config/household.hpp"

namespace tidewright::config {

// One thing that is wrong with the file. Lines and columns count from 1.
struct Problem {
  int line = 1;
  int column = 1;
  std::string what;     // what is wrong, what was found, what was expected, nearest spelling
  std::string hint;     // what to do; may be empty
  bool secret = false;  // the value in that line is not to be shown
};

struct Understood {
  std::optional<Household> household;  // none if there is any problem
  std::vector<Problem> problems;       // in the order of the file
};

// `text` is the file's content. Never throws; never reads a file or the environment.
Understood read(std::string_view text);

// "FILE:LINE:COLUMN: error: …", the line, a caret, the hint. Several lines, with a final newline.
std::string render(const Problem&, std::string_view file_name, std::string_view text);

}  // namespace tidewright::config
