#include "config/reader/document.hpp"

#include <fmt/format.h>
#include <toml++/toml.h>

#include <algorithm>
#include <tuple>

namespace tidewright::config {
namespace {

Spot spot(const toml::source_region& region) {
  return {static_cast<int>(region.begin.line), static_cast<int>(region.begin.column)};
}

Node node_of(const toml::node& from);

void add_children(const toml::table& table, Node& into) {
  for (const auto& [key, value] : table) {
    Node child = node_of(value);
    child.key = key.str();
    child.key_at = spot(key.source());
    into.children.push_back(std::move(child));
  }
  std::stable_sort(into.children.begin(), into.children.end(), [](const Node& a, const Node& b) {
    return std::tie(a.key_at.line, a.key_at.column) < std::tie(b.key_at.line, b.key_at.column);
  });
}

Node node_of(const toml::node& from) {
  Node node;
  node.at = spot(from.source());
  if (const auto* table = from.as_table()) {
    node.text = "a table";
    add_children(*table, node);
  } else if (const auto* array = from.as_array()) {
    node.kind = Node::Kind::array;
    node.text = "a list";
    for (const toml::node& item : *array) node.children.push_back(node_of(item));
  } else if (const auto* text = from.as_string()) {
    node.kind = Node::Kind::text;
    node.text = text->get();
  } else if (const auto* yes = from.as_boolean()) {
    node.kind = Node::Kind::yes_no;
    node.number = yes->get() ? 1 : 0;
    node.text = yes->get() ? "true" : "false";
  } else if (const auto number = from.value<double>(); from.is_number() && number) {
    node.kind = Node::Kind::number;
    node.number = *number;
    node.text = fmt::format("{}", *number);
  } else {
    node.kind = Node::Kind::date;
    node.text = "a date or time";
  }
  return node;
}

// What most often stands behind a complaint of the parser.
std::string advice(std::string_view complaint) {
  if (complaint.find("redefine") != std::string_view::npos) {
    return "It stands in the file twice: keep one of the two.";
  }
  if (complaint.find("value") != std::string_view::npos ||
      complaint.find("comment or whitespace") != std::string_view::npos) {
    return "Texts and quantities stand in quotes, such as \"200 L\".";
  }
  return "Look for a missing quote, bracket or equals sign.";
}

}  // namespace

std::string as_written(const Node& node) {
  return node.kind == Node::Kind::text ? fmt::format("\"{}\"", node.text) : node.text;
}

std::variant<Node, Problem> parse(std::string_view text) {
  const toml::parse_result result = toml::parse(text);
  if (!result) {
    std::string_view complaint = result.error().description();
    if (const auto colon = complaint.find(": "); colon != std::string_view::npos) {
      complaint.remove_prefix(colon + 2);  // the grammar's own name of the place says nothing
    }
    const Spot at = spot(result.error().source());
    return Problem{std::max(at.line, 1), std::max(at.column, 1),
                   fmt::format("this is not TOML, and nothing after it was read: {}", complaint),
                   advice(complaint)};
  }
  return node_of(result.table());
}

}  // namespace tidewright::config
