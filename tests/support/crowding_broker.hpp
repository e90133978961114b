// A small TLS broker of the tests' own that puts its acknowledgement of a command, or its answer to
// a ping, and a following `wet` into one TLS record. Some brokers do so, mosquitto does not: a
// client that waits for its socket then has a message in hand that no socket shows.
#pragma once

#include <atomic>
#include <chrono>
#include <cstdint>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

#include "tests/support/certificates.hpp"
#include "tests/support/wire.hpp"

struct ssl_st;
struct ssl_ctx_st;

namespace tidewright::support {

class CrowdingBroker {
 public:
  // So many acknowledgements of what is published on `command`, then every answer to a ping, carry
  // a `wet` on `leak`. Heartbeats are not given back, so that the client has reason to ping.
  CrowdingBroker(const Certified& server, std::string command, std::string leak,
                 std::size_t crowded_acknowledgements);
  ~CrowdingBroker();
  CrowdingBroker(const CrowdingBroker&) = delete;
  CrowdingBroker& operator=(const CrowdingBroker&) = delete;

  std::string uri() const { return "mqtts://127.0.0.1:" + std::to_string(port_); }
  // How long each `wet` waited for the next command.
  std::vector<std::chrono::microseconds> after_acknowledgement() const;
  std::vector<std::chrono::microseconds> after_ping() const;

 private:
  using Clock = std::chrono::steady_clock;
  struct Connection;

  void serve();
  void speak(int socket);
  void answer(Connection& connection, const Packet& packet);
  void published(Connection& connection, const Packet& packet);
  Packet wet();

  const std::string command_;
  const std::string leak_;
  ssl_ctx_st* const context_;
  int listener_;
  int port_;
  std::atomic<bool> ending_ = false;

  mutable std::mutex lock_;  // of what follows
  std::size_t crowded_left_;
  std::uint16_t last_id_ = 0;
  std::vector<std::chrono::microseconds>* waits_ = nullptr;  // where the running wait belongs
  Clock::time_point said_{};
  std::vector<std::chrono::microseconds> after_acknowledgement_;
  std::vector<std::chrono::microseconds> after_ping_;

  std::vector<std::thread> speaking_;
  std::thread serving_;
};

}  // namespace tidewright::support
