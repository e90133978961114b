// `tidewright run`: the daemon itself.
#pragma once

#include <functional>
#include <string>

namespace CLI {
class App;
}

namespace tidewright::commands {

struct RunOptions {
  std::string config_file;
  std::string broker;  // instead of the file's; empty = the file's
  std::string state_directory = "/var/lib/tidewright";
  double pace = 1;  // the room's clock runs so many times faster, for demonstrations
  bool json_log = false;
};

// Returns after a stop signal: 0. Else 66 no such file, 73 state cannot be kept, 78 the file is
// wrong. It never ends because of the network.
int run(const RunOptions& options);

std::function<int()> prepare_run(CLI::App& app);

}  // namespace tidewright::commands
