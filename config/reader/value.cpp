#include "config/reader/value.hpp"

#include <fmt/format.h>

#include <cmath>

#include "config/reader/value_parts.hpp"
#include "config/reader/wording.hpp"

namespace tidewright::config {
namespace {

// The base value of a row's own text.
double base_of(std::string_view text) {
  const auto read = read_quantity(text);
  if (const auto* measure = std::get_if<Measure>(&read)) return measure->in_base();
  return read_number(text).value_or(0);
}

bool read_numeral(const Key& key, const Node& node, Value& value, Problems& problems) {
  const bool whole = std::floor(node.number) == node.number;
  if (node.kind != Node::Kind::number || !std::isfinite(node.number) ||
      (key.kind == Kind::count && !whole)) {
    refuse(key, node.at, as_written(node), std::string{key.help}, problems);
    return false;
  }
  value.number = node.number;
  return within_limits(key, node, value.number, problems);
}

bool read_words(const Key& key, const Node& node, Value& value, Problems& problems) {
  const bool list = node.kind == Node::Kind::array;
  const bool one = node.kind == Node::Kind::text && !node.text.empty();
  if (one) value.words.push_back(node.text);
  if (!one && (!list || node.children.empty())) {
    refuse(key, node.at, list ? "an empty list" : as_written(node), std::string{key.help},
           problems);
    return false;
  }
  for (const Node& item : node.children) {
    if (item.kind == Node::Kind::text && !item.text.empty()) {
      value.words.push_back(item.text);
      continue;
    }
    refuse(key, item.at, "a list with " + as_written(item) + " in it",
           "Each word stands in quotes and has at least one letter.", problems);
    return false;
  }
  return true;
}

bool read_yes_no(const Key& key, const Node& node, Value& value, Problems& problems) {
  if (node.kind == Node::Kind::yes_no) {
    value.number = node.number;
    return true;
  }
  problems.add(
      node.at,
      fmt::format("`{}` is {}; expected true or false, without quotes", key.name, as_written(node)),
      std::string{key.help});
  return false;
}

// Own units, steps, ranges and points: only the outer shape is known here.
bool read_own(const Key& key, const Node& node, Value& value, Problems& problems) {
  const bool list = key.kind == Kind::own_range || key.kind == Kind::own_points;
  const bool step = key.kind == Kind::own_step && node.kind == Node::Kind::number;
  if (node.kind != (list ? Node::Kind::array : Node::Kind::text) && !step) {
    refuse(key, node.at, as_written(node), std::string{key.help}, problems);
    return false;
  }
  value.node = node;
  return true;
}

}  // namespace

void refuse(const Key& key, Spot at, std::string_view found, std::string hint, Problems& problems) {
  problems.add(at, fmt::format("`{}` is {}; expected {}", key.name, found, expected(key)),
               std::move(hint));
}

bool within_limits(const Key& key, const Node& node, double value, Problems& problems) {
  const bool low = !key.low.empty() && value < base_of(key.low) - 1e-9;
  const bool high = !key.high.empty() && value > base_of(key.high) + 1e-9;
  if (!low && !high) return true;
  problems.add(node.at,
               fmt::format("`{}` is {}; expected at {} {}", key.name, as_written(node),
                           low ? "least" : "most", low ? key.low : key.high),
               std::string{key.help});
  return false;
}

std::optional<Value> read_value(const Key& key, const Node& node, Problems& problems) {
  Value value;
  value.at = node.at;
  value.told = true;
  value.text = node.text;
  bool good = false;
  switch (key.kind) {
    case Kind::text:
    case Kind::id:
    case Kind::topic:
    case Kind::pointer:
    case Kind::sentence:
    case Kind::choice:
    case Kind::hours:
      good = read_text(key, node, value, problems);
      break;
    case Kind::words:
      good = read_words(key, node, value, problems);
      break;
    case Kind::yes_no:
      good = read_yes_no(key, node, value, problems);
      break;
    case Kind::count:
    case Kind::number:
      good = read_numeral(key, node, value, problems);
      break;
    case Kind::own_unit:
    case Kind::own_step:
    case Kind::own_range:
    case Kind::own_points:
      good = read_own(key, node, value, problems);
      break;
    default:
      good = read_quantity_value(key, node, value, problems);
  }
  if (!good) return std::nullopt;
  return value;
}

std::optional<Value> standard_value(const Key& key) {
  Node node;
  node.text = std::string{key.standard};
  node.kind = Node::Kind::text;
  if (key.kind == Kind::count || key.kind == Kind::number) {
    node.kind = Node::Kind::number;
    node.number = base_of(key.standard);
  } else if (key.kind == Kind::yes_no) {
    node.kind = Node::Kind::yes_no;
    node.number = key.standard == "true" ? 1 : 0;
  }
  Problems none;
  std::optional<Value> value = read_value(key, node, none);
  if (value) value->told = false;
  return value;
}

}  // namespace tidewright::config
