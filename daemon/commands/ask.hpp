// The rows `ask` and `tell` of the command table: what is typed, and where the daemon is found.
#pragma once

#include <functional>

namespace CLI {
class App;
}

namespace tidewright::commands {

std::function<int()> prepare_ask(CLI::App& app);
std::function<int()> prepare_tell(CLI::App& app);

}  // namespace tidewright::commands
