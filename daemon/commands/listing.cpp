#include "daemon/commands/listing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

namespace tidewright::commands {
namespace {

std::vector<std::size_t> widths(const Listing& listing) {
  std::vector<std::size_t> widest;
  for (const std::string& column : listing.columns) widest.push_back(column.size());
  for (const auto& row : listing.rows) {
    for (std::size_t i = 0; i < row.size(); ++i) widest[i] = std::max(widest[i], row[i].size());
  }
  return widest;
}

std::string text_row(const std::vector<std::string>& row, const std::vector<std::size_t>& widest) {
  std::string text;
  for (std::size_t i = 0; i + 1 < row.size(); ++i) {
    text += fmt::format("{:<{}}  ", row[i], widest[i]);
  }
  return text + row.back() + '\n';
}

std::string markdown_row(const std::vector<std::string>& row) {
  std::string text = "|";
  for (const std::string& cell : row) {
    text += ' ';
    for (const char c : cell) {
      if (c == '|' || c == '<') text += '\\';
      text += c;
    }
    text += " |";
  }
  return text + '\n';
}

}  // namespace

std::string as_text(const Listing& listing) {
  const auto widest = widths(listing);
  std::string text = text_row(listing.columns, widest);
  for (const auto& row : listing.rows) text += text_row(row, widest);
  return text;
}

std::string as_json(const Listing& listing) {
  auto array = nlohmann::ordered_json::array();
  for (const auto& row : listing.rows) {
    nlohmann::ordered_json object;
    for (std::size_t i = 0; i < row.size(); ++i) object[listing.columns[i]] = row[i];
    array.push_back(object);
  }
  return array.dump() + '\n';
}

std::string as_markdown(const Listing& listing) {
  std::string text =
      fmt::format("# {}\n\nMade by the program; a test compares.\n\n", listing.title);
  text += markdown_row(listing.columns);
  for (std::size_t i = 0; i < listing.columns.size(); ++i) text += "|---";
  text += "|\n";
  for (const auto& row : listing.rows) text += markdown_row(row);
  return text;
}

}  // namespace tidewright::commands
