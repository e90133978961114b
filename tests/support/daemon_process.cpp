#include "tests/support/daemon_process.hpp"

#include <gtest/gtest.h>

#include <csignal>

#include "tests/support/eventually.hpp"

namespace tidewright::support {

std::string program() { return TIDEWRIGHT_BINARY_DIR "/tidewright"; }
std::string source_file(const std::string& path) { return TIDEWRIGHT_SOURCE_DIR "/" + path; }

DaemonProcess::DaemonProcess(std::string config_file, std::string broker_uri,
                             std::vector<std::string> further)
    : arguments_{program(),  "run",
                 "--config", std::move(config_file),
                 "--broker", std::move(broker_uri),
                 "--state",  directory_.path() + "/state"} {
  arguments_.insert(arguments_.end(), further.begin(), further.end());
  start();
}

// A daemon that is killed reports no leak; what it did wrong while it lived stands in its log.
DaemonProcess::~DaemonProcess() {
  terminate(Milliseconds{10'000});
  const std::string told = log();
  EXPECT_FALSE(has_sanitizer_report(told)) << told;
}

bool has_sanitizer_report(const std::string& log) {
  for (const char* mark : {"Sanitizer: ", "Sanitizer:DEADLYSIGNAL", ": runtime error: "}) {
    if (log.find(mark) != std::string::npos) return true;
  }
  return false;
}

void DaemonProcess::start() {
  process_ = std::make_unique<Process>(arguments_, directory_.path() + "/log");
}

bool DaemonProcess::logged(const std::string& text, Milliseconds bound) {
  return eventually(bound, [&] { return log().find(text) != std::string::npos; });
}

void DaemonProcess::kill() {
  process_->signal(SIGKILL);
  process_->wait(Milliseconds{5'000});
}

std::optional<int> DaemonProcess::terminate(Milliseconds bound) {
  process_->signal(SIGTERM);
  return process_->wait(bound);
}

}  // namespace tidewright::support
