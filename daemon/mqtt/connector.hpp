// The helper thread of the safety line: it connects, subscribes and hands the session over.
// Before this process first uses the daemon's name at the broker, it listens whether another
// daemon's heartbeat is heard under that name; if so it stands back, for as long as that lives.
#pragma once

#include <chrono>
#include <memory>
#include <string>
#include <vector>

#include "daemon/mqtt/session.hpp"

namespace tidewright::mqtt {

struct SafetySettings {
  Access access;
  std::string base;       // names the daemon at the broker: client id `<base>-safety`
  std::string instance;   // of this process, for people too: "cellar/4711"
  std::string heartbeat;  // topic
  std::vector<std::string> topics;
};

// "<base> <instance> ": what every heartbeat begins with.
std::string beat_prefix(const SafetySettings& settings);

class Connector {
 public:
  explicit Connector(SafetySettings settings);
  ~Connector();
  Connector(const Connector&) = delete;
  Connector& operator=(const Connector&) = delete;

  // Tries after `wait`, and then again and again, until there is a session. To be called only
  // while no session lives. `look_first`: listen for another daemon before using the name.
  void start(std::chrono::milliseconds wait, bool look_first);

  // Readable (epoll) when take() has something.
  int descriptor() const;
  struct Taken {
    std::unique_ptr<Session> session;  // connected and subscribed, or
    bool standing_back = false;        // another daemon was heard
  };
  Taken take();

  // Asks the helper to end, and waits a little. False if it hangs in a call that nothing can
  // end (a silent name server): the process must then leave without it.
  bool end();

 private:
  struct Shared;
  std::shared_ptr<Shared> shared_;
};

}  // namespace tidewright::mqtt
