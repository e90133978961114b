// The commands of the program, one row each. A new command is one file, which says what it needs
// and does, and one row in table.cpp.
#pragma once

#include <functional>
#include <span>

namespace CLI {
class App;
}

namespace tidewright::commands {

// Adds the command's options to `app`; the returned action runs once they are parsed and gives
// the exit code (sysexits).
using Prepare = std::function<int()> (*)(CLI::App& app);

struct Row {
  const char* name;
  const char* summary;
  const char* example;
  Prepare prepare;
};

std::span<const Row> table();

}  // namespace tidewright::commands
