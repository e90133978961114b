// A table of the handbook: tests/handbook/tables/*.csv. Lines that begin with # say where its
// numbers come from.
#pragma once

#include <string>
#include <vector>

namespace tidewright::handbook {

struct Table {
  std::string file;  // "seawater/04_density_grid.csv"
  std::string source;
  std::vector<std::string> columns;
  struct Line {
    int number;  // in the file, from 1
    std::vector<std::string> cells;
  };
  std::vector<Line> lines;
};

// Throws std::runtime_error with the place if the file is not there or a line has another number of
// cells than the head.
Table read_table(const std::string& file);

// One line of a table, its cells by the name of their column.
class Row {
 public:
  Row(const Table& table, const Table::Line& line) : table_(&table), line_(&line) {}

  // Throw std::runtime_error if there is no such column, or the cell is no number.
  const std::string& text(const std::string& column) const;
  double operator[](const std::string& column) const;
  bool empty(const std::string& column) const { return text(column).empty(); }
  // An empty text if the table has no such column.
  std::string text_or_none(const std::string& column) const;

  int number() const { return line_->number; }
  const Table& table() const { return *table_; }

 private:
  const Table* table_;
  const Table::Line* line_;
};

}  // namespace tidewright::handbook
