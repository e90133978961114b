// A private mosquitto on a loopback port of its own, without persistence.
#pragma once

#include <memory>
#include <string>

#include "tests/support/process.hpp"

namespace tidewright::support {

// A port of 127.0.0.1 on which nothing listens now.
int free_port();
// Whether somebody takes connections there, within `bound`.
bool listening(int port, Milliseconds bound);

class Broker {
 public:
  // Started at once. `settings`: further lines of its configuration.
  explicit Broker(const std::string& settings = "set_tcp_nodelay true");

  int port() const { return port_; }
  std::string uri() const { return "mqtt://127.0.0.1:" + std::to_string(port_); }
  // What it wrote: connections, subscriptions, refusals.
  std::string log() const { return read_file(directory_.path() + "/log"); }

  void start();  // on the same port, having forgotten everything
  void stop();   // SIGTERM
  void kill();   // SIGKILL
  void pause();  // SIGSTOP: connections stay open, nothing answers
  void resume();

 private:
  TemporaryDirectory directory_;
  int port_;
  std::unique_ptr<Process> process_;
};

}  // namespace tidewright::support
