// `tidewright rehearse --config FILE`: bad nights for the household's own file: what was injected,
// what it came to, and the worst time from a wet floor to OFF under every single fault.
#pragma once

#include <cstdint>
#include <functional>
#include <iosfwd>
#include <string>

namespace CLI {
class App;
}

namespace tidewright::commands {

struct Rehearse {
  std::string config;
  std::uint64_t seed = 1;
  std::uint64_t days = 30;
  bool json = false;
};

// Exit code: 0 nothing was violated; 70 something was (its night is printed); 66 no such file;
// 78 the file is not understood.
int rehearse(const Rehearse& rehearse, std::ostream& out);

std::function<int()> prepare_rehearse(CLI::App& app);

}  // namespace tidewright::commands
