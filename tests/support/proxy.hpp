// A small TCP proxy of the tests' own between a client and a broker on loopback: it can fall silent
// without closing anything (a half-open link), and answer like a broker that knows no MQTT 5.
#pragma once

#include <atomic>
#include <thread>
#include <vector>

namespace tidewright::support {

class Proxy {
 public:
  explicit Proxy(int broker_port);
  ~Proxy();
  Proxy(const Proxy&) = delete;
  Proxy& operator=(const Proxy&) = delete;

  int port() const { return port_; }
  // Connections that are open now pass nothing more on, either way; new ones work.
  void cut_silently();
  // From now on MQTT 5 is refused as MQTT 3.1.1 (section 3.2.2.3) says: return code 1.
  void refuse_version_5() { refuse_version_5_ = true; }
  int connections() const { return connections_; }

 private:
  void serve();
  void pass(int client);

  int broker_port_;
  int listener_;
  int port_;
  std::atomic<bool> ending_ = false;
  std::atomic<bool> refuse_version_5_ = false;
  std::atomic<int> generation_ = 0;  // counts the cuts
  std::atomic<int> connections_ = 0;
  std::vector<std::thread> passing_;
  std::thread serving_;
};

}  // namespace tidewright::support
