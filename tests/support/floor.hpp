// The floor of what any program can do from `wet` to `OFF` at a broker: a responder by hand on bare
// epoll, in a process of its own. What the daemon takes means something beside it only.
#pragma once

#include <sys/types.h>

#include <string>
#include <vector>

#include "tests/support/mqtt_client.hpp"

namespace tidewright::support {

class Floor {
 public:
  static constexpr const char* leak = "floor/leak";
  static constexpr const char* set = "floor/set";

  // Answers each message on `leak` with OFF on `set`, QoS 1.
  explicit Floor(int port);
  ~Floor();
  Floor(const Floor&) = delete;
  Floor& operator=(const Floor&) = delete;

 private:
  pid_t pid_;
};

// One way from a leak to a switched plug, and how long it took each time.
struct Path {
  std::string leak;
  std::string set;
  std::vector<double> microseconds{};
  int lost = 0;
};

// Says `wet` once on that path and waits a second at most for the answer; what came before it is
// not counted. `home` is subscribed to path.set.
void react(MqttClient& home, Path& path);

// 0 if nothing was measured.
double quantile(const Path& path, double part);

}  // namespace tidewright::support
