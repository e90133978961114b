// A test's own hand on the broker: one connection, no threads; it reads while a test waits.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "tests/support/process.hpp"
#include "tests/support/wire.hpp"

namespace tidewright::support {

class MqttClient {
 public:
  // Connects with a clean start, or throws. `version` is 4 (3.1.1) or 5.
  MqttClient(int port, const std::string& id, int version = 5,
             const std::optional<Will>& will = {});
  ~MqttClient();  // closes without DISCONNECT: a will is published
  MqttClient(const MqttClient&) = delete;
  MqttClient& operator=(const MqttClient&) = delete;

  // Both return when the broker has acknowledged, or throw after 5 s.
  void subscribe(const std::string& filter, int qos = 1);
  void publish(Message message);  // id is set here
  void publish(const std::string& topic, const std::string& payload, bool retained = false);

  // The next message that arrived and was not taken yet, or none within `bound`.
  std::optional<Message> next(Milliseconds bound);
  // The first that matches; the ones before it are dropped (they stay in `seen`).
  std::optional<Message> await(const std::function<bool(const Message&)>& matches,
                               Milliseconds bound);
  std::optional<Message> await(const std::string& topic, const std::string& payload,
                               Milliseconds bound);
  // The next on that topic, whatever it says.
  std::optional<Message> await_topic(const std::string& topic, Milliseconds bound);

  // Every message ever received, in order.
  const std::vector<Message>& seen() const { return seen_; }
  bool connected() const { return fd_ >= 0; }

 private:
  void send(const Packet&);
  std::uint16_t next_id();
  // Reads until `done` or `bound`; answers QoS 1 by itself.
  bool read_until(const std::function<bool()>& done, Milliseconds bound);
  void handle(const Packet&);

  int fd_ = -1;
  int version_;
  std::string buffer_;
  std::uint16_t last_id_ = 0;
  std::uint16_t acknowledged_ = 0;
  std::uint8_t connack_ = 255;
  std::vector<Message> seen_;
  std::size_t taken_ = 0;
};

}  // namespace tidewright::support
