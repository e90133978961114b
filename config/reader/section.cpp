#include "config/reader/section.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "config/reader/nearest.hpp"
#include "config/reader/wording.hpp"

namespace tidewright::config {
namespace {

std::vector<const Key*> rows_of(std::span<const Part> parts) {
  std::vector<const Key*> rows;
  for (const Part part : parts) {
    for (const Key& key : keys()) {
      if (key.part == part) rows.push_back(&key);
    }
  }
  return rows;
}

const Key* row_named(std::span<const Key* const> rows, std::string_view name) {
  const auto found =
      std::find_if(rows.begin(), rows.end(), [&](const Key* key) { return key->name == name; });
  return found == rows.end() ? nullptr : *found;
}

// Returns the key that was probably meant; empty if there is no telling.
std::string_view refuse_unknown(const Node& child, const std::string& title,
                                std::span<const Key* const> rows, Problems& problems) {
  for (const Heir& heir : heirs()) {
    const Key* key = row_named(rows, heir.key);
    if (heir.name != child.key || key == nullptr) continue;
    std::string what =
        fmt::format("`{}` is not known in {}; it is called `{}`", child.key, title, heir.key);
    std::string hint = fmt::format("{}{}{}", heir.why, heir.why.empty() ? "" : " ", key->help);
    if (heir.secret) {
      problems.add_secret(child.key_at, std::move(what), std::move(hint));
    } else {
      problems.add(child.key_at, std::move(what), std::move(hint));
    }
    return key->name;
  }
  std::vector<std::string_view> names;
  for (const Key* key : rows) names.push_back(key->name);
  const std::string_view near = nearest(child.key, names);
  problems.add(child.key_at,
               fmt::format("`{}` is not known in {}{}", child.key, title, did_you_mean(near)),
               near.empty() ? fmt::format("Known here: {}.", listed(names, "and"))
                            : std::string{row_named(rows, near)->help});
  return near;
}

}  // namespace

Section::Section(const Node& table, std::string title, std::string id, std::span<const Part> parts,
                 Problems& problems)
    : key_(table.key),
      title_(std::move(title)),
      id_(std::move(id)),
      at_(table.key.empty() ? table.at : table.key_at) {
  const std::vector<const Key*> rows = rows_of(parts);
  for (const Node& child : table.children) read_child(child, rows, problems);
  for (const Key* key : rows) {
    if (mentioned_.contains(key->name)) continue;
    if (key->need == Need::required) {
      problems.add(
          at_, fmt::format("`{}` is missing in {}; expected {}", key->name, title_, expected(*key)),
          std::string{key->help});
    } else if (!key->standard.empty()) {
      if (auto value = standard_value(*key)) {
        value->at = at_;
        values_.emplace(key->name, std::move(*value));
      }
    }
  }
}

void Section::read_child(const Node& child, std::span<const Key* const> rows, Problems& problems) {
  const Key* key = row_named(rows, child.key);
  if (key == nullptr) {
    // A key that is misspelt is not also missing.
    const std::string_view meant = refuse_unknown(child, title_, rows, problems);
    if (!meant.empty()) mentioned_.emplace(meant, child.at);
    return;
  }
  mentioned_.emplace(child.key, child.at);
  if (!parts_of(key->kind).empty()) return read_table(*key, child, problems);
  if (auto value = read_value(*key, child, problems)) {
    values_.emplace(child.key, std::move(*value));
  }
}

// A text in place of the table is its topic.
void Section::read_table(const Key& key, const Node& child, Problems& problems) {
  Node table = child;
  if (child.kind == Node::Kind::text) {
    Node topic = child;
    topic.key = "topic";
    table.kind = Node::Kind::table;
    table.children.assign(1, topic);
  } else if (child.kind != Node::Kind::table) {
    problems.add(child.at,
                 fmt::format("`{}` is {}; expected a table, such as {{ topic = \"…\" }}", key.name,
                             as_written(child)),
                 std::string{key.help});
    return;
  }
  tables_.emplace_back(table, fmt::format("`{}` of {}", key.name, title_), id_, parts_of(key.kind),
                       problems);
}

const Value* Section::value(std::string_view key) const {
  const auto found = values_.find(key);
  return found == values_.end() ? nullptr : &found->second;
}

const Value* Section::told(std::string_view key) const {
  const Value* found = value(key);
  return found != nullptr && found->told ? found : nullptr;
}

const Section* Section::table(std::string_view key) const {
  const auto found = std::find_if(tables_.begin(), tables_.end(),
                                  [&](const Section& table) { return table.key_ == key; });
  return found == tables_.end() ? nullptr : &*found;
}

bool Section::mentions(std::string_view key) const { return mentioned_.contains(key); }

Spot Section::at(std::string_view key) const {
  const auto found = mentioned_.find(key);
  return found == mentioned_.end() ? at_ : found->second;
}

std::string Section::text(std::string_view key) const {
  const Value* found = value(key);
  return found == nullptr ? "" : found->text;
}

double Section::number(std::string_view key, double fallback) const {
  const Value* found = value(key);
  return found == nullptr ? fallback : found->number;
}

}  // namespace tidewright::config
