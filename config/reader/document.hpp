// The household's file as a tree whose every part knows its place. Knows TOML, not the household.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "config/reader/reader.hpp"

namespace tidewright::config {

// Lines and columns count from 1, columns in characters.
struct Spot {
  int line = 1;
  int column = 1;
};

struct Node {
  enum class Kind : std::uint8_t { table, array, text, number, yes_no, date };
  Kind kind = Kind::table;
  Spot at;      // of the value
  Spot key_at;  // of its key
  std::string key;
  std::string text;            // of a text: its content; else as a person would write it
  double number = 0;           // of a number; 1 or 0 of a yes_no
  std::vector<Node> children;  // of a table, in the order of the file; of an array
};

// As it stands in the file: texts in quotes.
std::string as_written(const Node&);

// The whole file, or the first place at which it is no TOML.
std::variant<Node, Problem> parse(std::string_view text);

}  // namespace tidewright::config
