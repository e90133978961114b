// One value of the file, read as its key's row says.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "config/reader/document.hpp"
#include "config/reader/keys.hpp"
#include "config/reader/problems.hpp"
#include "config/reader/quantity.hpp"

namespace tidewright::config {

struct Value {
  Spot at;
  bool told = false;  // by the file; otherwise it is the row's standard
  std::string text;   // texts, ids, topics, choices; of a quantity as it was written
  double number = 0;  // quantities in their base unit; counts, numbers; 1 or 0 of a yes_no
  Measure measure;    // of a quantity
  std::vector<std::string> words;
  int from = 0;  // of hours: minutes after midnight
  int to = 0;
  Node node;  // own_...: still to be read, in terms of the instrument
};

// The value, or none and a problem. The key's row is right or the program is wrong: its standard,
// low and high are read by the same function (a test reads them all).
std::optional<Value> read_value(const Key&, const Node&, Problems&);
// The row's standard.
std::optional<Value> standard_value(const Key&);

}  // namespace tidewright::config
