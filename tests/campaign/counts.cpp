#include "tests/campaign/counts.hpp"

#include <fmt/format.h>

#include <cstdio>
#include <fstream>

namespace tidewright::campaign {

Counts load(const std::string& file) {
  Counts counts;
  std::ifstream in(file);
  in >> counts.incidents >> counts.violations >> counts.steps >> counts.wet >> counts.trips >>
      counts.made >> counts.possible >> counts.core_seconds;
  Cell cell;
  Count count;
  std::string first;
  while (in >> cell.fault >> cell.phase >> cell.finding >> count.times >> count.tries >> first) {
    count.first = recipe_of(first);
    counts.cells[cell] = count;
  }
  return counts;
}

void save(const Counts& counts, const std::string& file) {
  std::ofstream out(file + ".new");
  out << fmt::format("{} {} {} {} {} {} {} {}\n", counts.incidents, counts.violations, counts.steps,
                     counts.wet, counts.trips, counts.made, counts.possible, counts.core_seconds);
  for (const auto& [cell, count] : counts.cells) {
    out << fmt::format("{} {} {} {} {} {}\n", cell.fault, cell.phase, cell.finding, count.times,
                       count.tries, text(count.first));
  }
  out.close();
  std::rename((file + ".new").c_str(), file.c_str());
}

}  // namespace tidewright::campaign
