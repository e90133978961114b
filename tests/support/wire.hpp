// MQTT 3.1.1 and 5 on the wire, as far as the tests need it: written from the OASIS standards, with
// nothing of the library that the daemon uses.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace tidewright::support {

enum class Kind : std::uint8_t {
  connect = 1,
  connack = 2,
  publish = 3,
  puback = 4,
  subscribe = 8,
  suback = 9,
  pingreq = 12,
  pingresp = 13,
  disconnect = 14,
};

struct Packet {
  Kind kind{};
  std::uint8_t flags = 0;
  std::string body;
};

struct Message {
  std::string topic{};
  std::string payload{};
  int qos = 0;
  bool retained = false;
  std::uint16_t id = 0;
  std::optional<std::uint32_t> expiry_seconds{};  // these three: MQTT 5 only
  std::string response_topic{};
  std::string correlation{};
  std::chrono::steady_clock::time_point arrived{};  // set by MqttClient
};

struct Will {
  std::string topic{};
  std::string payload{};
};

std::string encode(const Packet&);
// Takes the first whole packet off the front of `buffer`, or none.
std::optional<Packet> take(std::string& buffer);

// `version` is 4 (3.1.1) or 5. Always a clean start and no keep-alive.
Packet connect_packet(const std::string& client_id, int version,
                      const std::optional<Will>& will = {});
Packet subscribe_packet(std::uint16_t id, const std::string& filter, int qos, int version);
Packet publish_packet(const Message&, int version);
Packet puback_packet(std::uint16_t id);
Message publish_of(const Packet&, int version);

std::uint16_t number16(std::string_view bytes);  // big-endian, of the first two
std::string text_field(std::string_view text);   // with its length before it

}  // namespace tidewright::support
