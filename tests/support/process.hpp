// A program that a test started: found by its own pid, never by a name, and gone with the test.
#pragma once

#include <sys/types.h>

#include <chrono>
#include <optional>
#include <string>
#include <vector>

namespace tidewright::support {

using Milliseconds = std::chrono::milliseconds;

// A fresh directory under the system's temporary one, removed with this object.
class TemporaryDirectory {
 public:
  TemporaryDirectory();
  ~TemporaryDirectory();
  TemporaryDirectory(const TemporaryDirectory&) = delete;
  TemporaryDirectory& operator=(const TemporaryDirectory&) = delete;
  const std::string& path() const { return path_; }

 private:
  std::string path_;
};

class Process {
 public:
  // Starts `arguments` ([0] is the program); its output goes to `log_file`, appended.
  Process(const std::vector<std::string>& arguments, const std::string& log_file);
  ~Process();  // kills what still runs
  Process(const Process&) = delete;
  Process& operator=(const Process&) = delete;

  pid_t pid() const { return pid_; }
  bool running();
  void signal(int number);
  // Waits up to `bound`; the exit code (128 + number if a signal ended it), or none if it still
  // runs.
  std::optional<int> wait(Milliseconds bound);

 private:
  pid_t pid_ = -1;
  std::optional<int> code_;
};

std::string read_file(const std::string& path);
void write_file(const std::string& path, const std::string& text);

}  // namespace tidewright::support
