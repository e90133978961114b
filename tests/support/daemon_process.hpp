// The real `tidewright run`, started by a test.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "tests/support/process.hpp"

namespace tidewright::support {

class DaemonProcess {
 public:
  // `config_file`: the household's file. Its state lives in a directory of its own, kept over
  // start().
  DaemonProcess(std::string config_file, std::string broker_uri,
                std::vector<std::string> further = {});
  // Fails the test if a sanitizer had something to say in the log.
  ~DaemonProcess();
  DaemonProcess(const DaemonProcess&) = delete;
  DaemonProcess& operator=(const DaemonProcess&) = delete;

  void start();
  // Waits until the log holds `text`; false if it does not within `bound`.
  bool logged(const std::string& text, Milliseconds bound);
  std::string log() const { return read_file(directory_.path() + "/log"); }
  std::string state_directory() const { return directory_.path() + "/state"; }

  void kill();  // SIGKILL
  // SIGTERM; the exit code, or none if it still runs after `bound`.
  std::optional<int> terminate(Milliseconds bound = Milliseconds{2'000});
  Process& process() { return *process_; }

 private:
  TemporaryDirectory directory_;
  std::vector<std::string> arguments_;
  std::unique_ptr<Process> process_;
};

// Whether a log holds a report of AddressSanitizer, UndefinedBehaviorSanitizer, LeakSanitizer or
// ThreadSanitizer.
bool has_sanitizer_report(const std::string& log);

// The program under test and a file of the source tree, whatever the working directory.
std::string program();
std::string source_file(const std::string& path);

}  // namespace tidewright::support
