#include "tests/handbook/table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <fstream>
#include <stdexcept>

namespace tidewright::handbook {
namespace {

// Cells by RFC 4180, of one line.
std::vector<std::string> cells(const std::string& line) {
  std::vector<std::string> found(1);
  bool quoted = false;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const char c = line[i];
    if (c == '"' && quoted && i + 1 < line.size() && line[i + 1] == '"') {
      found.back() += line[++i];
    } else if (c == '"') {
      quoted = !quoted;
    } else if (c == ',' && !quoted) {
      found.emplace_back();
    } else if (c != '\r') {
      found.back() += c;
    }
  }
  return found;
}

}  // namespace

Table read_table(const std::string& file) {
  std::ifstream stream(TIDEWRIGHT_SOURCE_DIR "/tests/handbook/tables/" + file);
  if (!stream) throw std::runtime_error(file + ": cannot be read");
  Table table{file, {}, {}, {}};
  std::string line;
  for (int number = 1; std::getline(stream, line); ++number) {
    if (line.starts_with('#')) {
      table.source += line + '\n';
    } else if (table.columns.empty()) {
      table.columns = cells(line);
    } else if (!line.empty()) {
      table.lines.push_back({number, cells(line)});
      if (table.lines.back().cells.size() != table.columns.size()) {
        throw std::runtime_error(fmt::format("{}:{}: {} cells under {} columns", file, number,
                                             table.lines.back().cells.size(),
                                             table.columns.size()));
      }
    }
  }
  return table;
}

const std::string& Row::text(const std::string& column) const {
  const auto at = std::find(table_->columns.begin(), table_->columns.end(), column);
  if (at == table_->columns.end()) {
    throw std::runtime_error(fmt::format("{}: no column {}", table_->file, column));
  }
  return line_->cells.at(static_cast<std::size_t>(at - table_->columns.begin()));
}

std::string Row::text_or_none(const std::string& column) const {
  const auto& all = table_->columns;
  return std::find(all.begin(), all.end(), column) == all.end() ? std::string() : text(column);
}

double Row::operator[](const std::string& column) const {
  const std::string& cell = text(column);
  double value = 0;
  const char* end = cell.data() + cell.size();
  const auto [rest, error] = std::from_chars(cell.data(), end, value);
  if (cell.empty() || error != std::errc() || rest != end) {
    throw std::runtime_error(
        fmt::format("{}:{}: {} = \"{}\" is no number", table_->file, number(), column, cell));
  }
  return value;
}

}  // namespace tidewright::handbook
