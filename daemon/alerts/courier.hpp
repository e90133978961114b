// The courier: a program of its own (daemon/courier) that is started when there are letters and
// ends when it has tried each. What a mail server or a web server does to it, or how much memory
// its libraries want, cannot touch the program that holds the pump. Used by alerts.
#pragma once

#include <spawn.h>

#include <chrono>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "daemon/base/descriptor.hpp"
#include "daemon/post/orders.hpp"

namespace tidewright::alerts {

class Courier {
 public:
  explicit Courier(std::filesystem::path program);
  // One that is under way goes on alone.
  ~Courier() = default;

  // Requires that none is under way. False if the program cannot be started.
  bool send(const post::Orders&);
  bool under_way() const { return process_ > 0; }
  // What it has told since; never waits. Once it has come back under_way() is false: a letter of
  // which nothing was told has failed. One that stays too long is called back.
  std::vector<post::Outcome> hear();

 private:
  using Steady = std::chrono::steady_clock;

  std::filesystem::path program_;
  pid_t process_ = 0;
  std::unique_ptr<Descriptor> answers_;
  std::string heard_;  // the beginning of a line
  Steady::time_point sent_{};
};

// The courier that was installed beside this program.
std::filesystem::path courier_beside_us();

}  // namespace tidewright::alerts
