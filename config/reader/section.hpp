// A table of the file, checked against the rows of its parts: known keys, required keys, values.
// The per-section readers take their values from here and look at nothing else.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "config/reader/value.hpp"

namespace tidewright::config {

class Section {
 public:
  // Reads the table; whatever is wrong in it becomes a problem, all of it at once.
  //   title   "[vat.pure]", as messages call it
  //   id      "pure"; empty where there is one of its kind
  Section(const Node& table, std::string title, std::string id, std::span<const Part> parts,
          Problems& problems);

  const std::string& title() const { return title_; }
  const std::string& id() const { return id_; }
  Spot at() const { return at_; }

  // A good value, told or standard; null if there is none or it was bad.
  const Value* value(std::string_view key) const;
  // The same, if the file tells it.
  const Value* told(std::string_view key) const;
  // A table within: `level`, `feedback`. Null if the file has none.
  const Section* table(std::string_view key) const;
  // Whether the key stands in the file, good or bad.
  bool mentions(std::string_view key) const;
  // Where the key's value stands, or the section itself.
  Spot at(std::string_view key) const;

  // With a fallback for values that are missing or bad; the household is then thrown away.
  std::string text(std::string_view key) const;
  double number(std::string_view key, double fallback = 0) const;

 private:
  void read_child(const Node& child, std::span<const Key* const> rows, Problems& problems);
  void read_table(const Key& key, const Node& child, Problems& problems);

  std::string key_;
  std::string title_;
  std::string id_;
  Spot at_;
  std::map<std::string, Value, std::less<>> values_;
  std::vector<Section> tables_;
  std::map<std::string, Spot, std::less<>> mentioned_;
};

}  // namespace tidewright::config
