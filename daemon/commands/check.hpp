// `tidewright check FILE`.
#pragma once

#include <functional>
#include <string>

namespace CLI {
class App;
}

namespace tidewright::commands {

// Writes every problem of the household's file to stderr and returns 78 (EX_CONFIG), or 66
// (EX_NOINPUT) if it cannot be read. Otherwise says on stdout what it protects and what it does
// not, as words or as JSON, and returns 0.
int check(const std::string& file, bool as_json);

std::function<int()> prepare_check(CLI::App& app);

}  // namespace tidewright::commands
