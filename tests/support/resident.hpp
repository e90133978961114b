// How much memory a process holds now, in KiB: /proc/PID/status, VmRSS.
#pragma once

#include <sstream>
#include <string>

#include "tests/support/process.hpp"

namespace tidewright::support {

inline long resident_kib(pid_t pid) {
  std::istringstream status(read_file("/proc/" + std::to_string(pid) + "/status"));
  const std::string name = "VmRSS:";
  for (std::string line; std::getline(status, line);) {
    if (line.starts_with(name)) return std::stol(line.substr(name.size()));
  }
  return 0;
}

}  // namespace tidewright::support
